import { hidden, radios } from '../form/fields.js';
import { linkTo, type Question } from '../form/question.js';
import { keepAndShare } from '../sowing/keep-and-share.js';
import { type Html, html } from './html.js';
import type { Answered, View } from './view.js';
import { views } from './views.js';

/** What the document links to. */
export interface Files {
  readonly script: string;
  readonly style: string;
}

export interface Page {
  readonly question: Question;
  readonly view: View;
  /** What is asked, in short: it stands for the form where that is folded away. */
  readonly asked: Html;
  readonly form: Html;
  readonly answered: Answered | null;
  /** What stands in the answer's place where nothing was asked yet. */
  readonly opening: Html | null;
  /** What of the answer took longer. */
  readonly later: Html | null;
  readonly hasKey: boolean;
  readonly files: Files;
}

/** The whole document. */
export const page = ({ question, view, asked, form, answered, opening, later, hasKey, files }: Page): string =>
  documentOf(
    view.title,
    files,
    html`
    <header>
      <a class="name" href="/">Germination forecaster</a>
      ${leaves(question)}
    </header>
    <main data-view="${view.name}">
      <form id="ask" method="post" action="/" enctype="multipart/form-data" novalidate>
        <h1>${view.title}</h1>
        ${hidden('view', view.name)}
        <details id="asking" open>
          <summary><span id="asked">${asked}</span> <b>change</b></summary>
          ${form}
          ${radios('degrees', 'Read in', question.degrees, [
            { value: 'C', text: '°C' },
            { value: 'F', text: '°F' },
          ])}
          <p><button type="submit" class="main">Tell me</button></p>
        </details>
      </form>
      <div id="side">
        <p id="said" role="status" class="unseen"></p>
        <section id="answer" tabindex="-1" aria-label="Answer"${answered && html` data-answered`}${opening && html` data-opening`}>${answered?.shown ?? opening ?? html`<p class="waiting">${WAITING}</p>`}</section>
        <div id="later">${later ?? (answered?.later && html`<noscript><p><a href="${linkTo(question)}&amp;whole=1">Work out the rest as well</a></p></noscript>`)}</div>
        <section id="keep" aria-label="Keep and share">${keepAndShare(answered)}</section>
      </div>
    </main>
    <footer>
      <p>Ranges and odds say how sure this is; the soil has the last word. <a href="/docs">For other tools</a></p>
      ${hasKey && html`<form method="post" action="/session">${hidden('key', '')}<button class="quiet">Forget my key here</button></form>`}
    </footer>`,
  );

export const WAITING = 'Say what you sowed and which temperatures to go by; the answer will stand here.';

/** The names of the leaves; each link holds the question as it stands. */
export const leaves = (question: Question): Html =>
  html`<nav aria-label="Leaves">${Object.values(views).map(
    ({ name, title }) =>
      html`<a href="${linkTo({ ...question, view: name })}" data-leaf="${name}"${name === question.view && html` aria-current="page"`}>${title}</a>`,
  )}</nav>`;

/** What stands there as long as no key is known; with it the question is asked again. */
export const keyPage = (files: Files, asked: string, isRefused: boolean): string =>
  documentOf(
    'A key',
    files,
    html`<header><a class="name" href="/">Germination forecaster</a></header>
    <main><form id="key" method="post" action="/session">
      <h1>Your key</h1>
      ${hidden('asked', asked)}
      ${isRefused && html`<div class="problem" role="alert"><p>This key opens nothing here. Check it for a missing letter, or ask whoever runs the service.</p></div>`}
      <label class="field"><span>Key</span><input type="password" name="key" required autocomplete="current-password"></label>
      <p><button type="submit" class="main">Let me in</button></p>
      <p class="aside">It is asked for once, and kept in this browser for half a year, where no script can read it.</p>
    </form></main>`,
  );

const ICON =
  "data:image/svg+xml,%3Csvg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 16 16'%3E%3Cpath d='M8 15V7M8 8C8 4 5 3 2 3c0 3 2 5 6 5Zm0-1c0-3 2-5 6-5 0 4-3 5-6 5Z' fill='%23356b32' stroke='%23356b32'/%3E%3C/svg%3E";

const documentOf = (title: string, { script, style }: Files, body: Html): string =>
  html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${title} · Germination forecaster</title>
<link rel="icon" href="${ICON}">
<link rel="stylesheet" href="${style}">
<script type="module" src="${script}"></script>
</head>
<body>
<a class="skip" href="#answer">To the answer</a>
${body}
</body>
</html>
`.markup;
