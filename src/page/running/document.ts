import { sha256 } from '../../basics/digest.js';
import { colours } from '../shell/colours.js';
import { type Html, type HtmlPart, html, safe } from '../shell/html.js';

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
.options th[scope=row]{font-weight:400}
@media (min-width:40.01rem){.options th[scope=row] code{white-space:nowrap}}
@media (max-width:34rem){.wide thead{display:none}.wide tr{display:block;border-bottom:1px solid var(--rule);padding:.4rem 0}.wide td,.wide th[scope=row]{display:flex;justify-content:space-between;gap:1rem;border:0;padding:.1rem 0}.wide th[scope=row]{font-weight:600}.wide td::before{content:attr(data-of);color:var(--quiet)}}
@media (max-width:40rem){.options thead{display:none}.options tr{display:block;border-bottom:1px solid var(--rule);padding:.4rem 0}.options td,.options th[scope=row]{display:block;border:0;padding:.1rem 0}.options td:empty{display:none}.options td[data-of]::before{content:attr(data-of) ': ';color:var(--quiet)}}
@media print{html{background:none;font-size:10pt}body{max-width:none;padding:0}nav{display:none}pre,.cards>div,tr{break-inside:avoid}h2,h3{break-after:avoid}pre{background:none;border:1px solid var(--rule)}}
`;

/** A page of documentation: plain markup with its own style sheet, without a script. */
export interface Document {
  readonly body: Buffer;
  readonly type: string;
  readonly headers: Readonly<Record<string, string>>;
}

/** Only the page's own style sheet may be loaded. */
const POLICY = `default-src 'none'; style-src 'sha256-${sha256(STYLE).toString('base64')}'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`;

/**
 * Renders one page of documentation.
 *
 * @param links The anchors of its sections and their names in the list at the top, in order.
 */
export function documentPage(
  title: string,
  introduction: Html,
  links: readonly (readonly [anchor: string, name: string])[],
  sections: readonly Html[],
): Document {
  const page = html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>${title} · Germination forecaster</title>
<style>${safe(STYLE)}</style>
</head>
<body>
<main>
<h1>${title}</h1>
<p>${introduction}</p>
<nav aria-label="On this page"><ul>
${links.map(([anchor, name]) => html`<li><a href="#${anchor}">${name}</a></li>`)}
</ul></nav>
${sections}
</main>
</body>
</html>
`;
  return {
    body: Buffer.from(page.markup),
    type: 'text/html; charset=utf-8',
    headers: { 'content-security-policy': POLICY, 'cache-control': 'no-cache' },
  };
}

/** Text with code between backticks. */
export const coded = (text: string): Html[] =>
  text.split('`').map((part, i) => (i % 2 === 1 ? html`<code>${part}</code>` : html`${part}`));

/** A table whose first column names something; on a narrow screen each row becomes a block. */
export const optionsTable = (
  head: readonly string[],
  rows: readonly (readonly [HtmlPart, ...HtmlPart[]])[],
  labelled: readonly string[] = [],
): Html => html`<table class="options"><thead><tr>${head.map((cell) => html`<th scope="col">${cell}</th>`)}</tr></thead><tbody>
${rows.map(
  ([first, ...cells]) =>
    html`<tr><th scope="row">${first}</th>${cells.map((cell, i) => html`<td${labelled.includes(head[i + 1]!) && html` data-of="${head[i + 1]!}"`}>${cell}</td>`)}</tr>
`,
)}</tbody></table>`;
