import { sha256 } from '../../basics/digest.js';
import { colours } from '../shell/colours.js';
import { html, safe } from '../shell/html.js';
import { care } from './care.js';
import { sizes } from './sizes.js';
import { watching } from './watching.js';

const STYLE = `${colours()}
*{box-sizing:border-box}
html{color-scheme:light dark;background:var(--paper);color:var(--ink);font:1.0625rem/1.55 system-ui,sans-serif;-webkit-text-size-adjust:100%}
body{margin:0 auto;padding:1.5rem 1rem 3rem;max-width:52rem}
h1,h2,h3{font-family:"Iowan Old Style",Charter,"Source Serif 4",Georgia,"Liberation Serif",serif;line-height:1.25}
h1{font-size:1.6rem;font-weight:500;margin:0 0 1rem}
h2{font-size:1.3rem;font-weight:600;margin:2.5rem 0 .6rem;padding-top:.8rem;border-top:1px solid var(--rule)}
h3{font-size:1.05rem;font-weight:600;margin:1.4rem 0 .4rem}
p,ul,ol{margin:0 0 .8rem}
ul,ol{padding-left:1.3rem}
li{margin-bottom:.35rem}
a{color:var(--accent);text-underline-offset:.2em}
:focus-visible{outline:3px solid var(--accent);outline-offset:2px}
code,pre{font:.88em/1.5 ui-monospace,"Liberation Mono",monospace}
code{overflow-wrap:anywhere}
pre{background:var(--good);padding:.7rem .9rem;margin:0 0 .9rem;white-space:pre-wrap;overflow-wrap:anywhere}
pre i{color:var(--quiet);font-style:normal}
dl{margin:0 0 .8rem}
dt{margin-top:.6rem}
dd{margin:.1rem 0 0}
nav ul{list-style:none;padding:0;display:flex;flex-wrap:wrap;gap:.2rem 1.2rem}
table{border-collapse:collapse;width:100%;margin:0 0 1rem;font-size:.95rem}
th,td{text-align:left;vertical-align:top;padding:.4rem .8rem .4rem 0;border-bottom:1px solid var(--rule)}
thead th{color:var(--quiet);font-weight:600}
.numbers td,.numbers th{font-variant-numeric:tabular-nums}
.numbers td,.numbers th+th{text-align:right;padding:.4rem 0 .4rem .6rem}
.cards{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,22rem),1fr));gap:0 1.5rem}
.cards>div{border-top:1px solid var(--rule);padding-top:.6rem}
.cards p{margin-bottom:.35rem}
.note{color:var(--quiet);font-size:.95rem}
.scroll{overflow-x:auto}
@media (max-width:34rem){.wide thead{display:none}.wide tr{display:block;border-bottom:1px solid var(--rule);padding:.4rem 0}.wide td,.wide th[scope=row]{display:flex;justify-content:space-between;gap:1rem;border:0;padding:.1rem 0}.wide th[scope=row]{font-weight:600}.wide td::before{content:attr(data-of);color:var(--quiet)}}
@media print{html{background:none;font-size:10pt}body{max-width:none;padding:0}nav{display:none}pre,.cards>div,tr{break-inside:avoid}h2,h3{break-after:avoid}pre{background:none;border:1px solid var(--rule)}}
`;

const page = html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>Run the service · Germination forecaster</title>
<style>${safe(STYLE)}</style>
</head>
<body>
<main>
<h1>Run the service</h1>
<p>For whoever keeps the service going for others. It is one process and one database. How to call it is told at <a href="/docs">/docs</a>; the settings stand in the README.</p>
<nav aria-label="On this page"><ul>
<li><a href="#backup">Back up</a></li><li><a href="#proxy">Proxy</a></li><li><a href="#keys">Keys</a></li><li><a href="#upgrade">New versions</a></li><li><a href="#sizes">Sizes</a></li><li><a href="#limits">Limits</a></li><li><a href="#metrics">Watch it</a></li><li><a href="#refusals">503</a></li>
</ul></nav>
${care}
${sizes}
${watching}
</main>
</body>
</html>
`;

/** The page for who runs the service. */
export const runningPage = Buffer.from(page.markup);

/** Nothing but the page's own style sheet may be loaded. */
export const RUNNING_POLICY = `default-src 'none'; style-src 'sha256-${sha256(STYLE).toString('base64')}'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`;
