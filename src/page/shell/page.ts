import { hidden, radios } from '../form/fields.js';
import { linkTo, type PageQuestion } from '../form/question.js';
import { keepAndShare } from '../sowing/keep-and-share.js';
import { type Html, html } from './html.js';
import type { AnsweredView, View } from './view.js';
import { views } from './views.js';
import type { PageReader } from './words.js';

/** Files that the document links to. */
export interface Files {
  readonly script: string;
  readonly style: string;
  /** The messages in the reader's language, for the script. */
  readonly messages: string;
}

export interface PageContent {
  readonly question: PageQuestion;
  readonly reader: PageReader;
  readonly view: View;
  /** The question in short, shown in place of the folded form. */
  readonly asked: Html;
  readonly form: Html;
  readonly answered: AnsweredView | null;
  /** Shown in place of an answer before the first question. */
  readonly opening: Html | null;
  /** The part of the answer that takes longer. */
  readonly later: Html | null;
  readonly hasKey: boolean;
  /** True if the garden is invented. */
  readonly isDemo: boolean;
  readonly files: Files;
}

/** The whole document. */
export function page({
  question,
  reader,
  view,
  asked,
  form,
  answered,
  opening,
  later,
  hasKey,
  isDemo,
  files,
}: PageContent): string {
  const { say, tell } = reader;
  const title = say(view.title);
  return documentOf(
    title,
    files,
    reader,
    html`
    <header>
      <a class="name" href="/${question.lang && `?lang=${question.lang}`}">${say('page.shell.name')}</a>
      ${tabs(question, reader)}
      ${languages(reader, (lang) => linkTo({ ...question, lang }))}
      ${isDemo && html`<p class="demo" role="note">${tell('page.shell.demo', { a: (text) => html`<a href="${linkTo({ ...question, view: 'week', bed: '', near: '' })}">${text}</a>` })}</p>`}
    </header>
    <main data-view="${view.name}">
      <form id="ask" method="post" action="/" enctype="multipart/form-data" novalidate>
        <h1>${title}</h1>
        ${hidden('view', view.name)}
        ${question.lang !== '' && hidden('lang', question.lang)}
        <details id="asking" open>
          <summary><span id="asked">${asked}</span> <b>${say('page.shell.change')}</b></summary>
          ${form}
          ${radios('degrees', say('page.shell.read-in'), question.degrees, [
            { value: 'C', text: '°C' },
            { value: 'F', text: '°F' },
          ])}
          <p><button type="submit" class="main">${say('page.shell.tell-me')}</button></p>
        </details>
      </form>
      <div id="side">
        <p id="said" role="status" class="unseen"></p>
        <section id="answer" tabindex="-1" aria-label="${say('page.shell.answer')}"${answered && html` data-answered`}${opening && html` data-opening`}>${answered?.shown ?? opening ?? waiting(reader)}</section>
        <div id="later">${later ?? (answered?.later && html`<noscript><p><a href="${linkTo(question)}&amp;whole=1">${say('page.shell.whole')}</a></p></noscript>`)}</div>
        <section id="keep" aria-label="${say('page.share.title')}">${keepAndShare(answered, reader)}</section>
      </div>
    </main>
    <footer>
      <p>${say('page.shell.how-sure')} <a href="/docs">${say('page.shell.other-tools')}</a></p>
      ${hasKey && html`<form method="post" action="/session">${hidden('key', '')}${question.lang && hidden('asked', `/?lang=${question.lang}`)}<button class="quiet">${say('page.shell.forget-key')}</button></form>`}
    </footer>`,
  );
}

/** Shown in place of an answer while the question is incomplete. */
export const waiting = ({ say }: PageReader): Html => html`<p class="waiting">${say('page.shell.waiting')}</p>`;

/** The tabs of the views; each link holds the question as it stands. */
export const tabs = (question: PageQuestion, { say }: PageReader): Html =>
  html`<nav aria-label="${say('page.shell.leaves')}">${Object.values(views).map(
    ({ name, title }) =>
      html`<a href="${linkTo({ ...question, view: name })}" data-tab="${name}"${name === question.view && html` aria-current="page"`}>${say(title)}</a>`,
  )}</nav>`;

/** Each language by its own name. */
const LANGUAGES = { en: 'English', de: 'Deutsch' } as const;

/** The languages of the page; each link leads to the same question. */
const languages = ({ say, language }: PageReader, linkIn: (language: PageReader['language']) => string): Html =>
  html`<nav class="languages" aria-label="${say('page.shell.languages')}">${(['en', 'de'] as const).map(
    (one) =>
      html`<a href="${linkIn(one)}" lang="${one}" hreflang="${one}" data-lang="${one}"${one === language && html` aria-current="true"`}>${LANGUAGES[one]}</a>`,
  )}</nav>`;

/** Shown until a key is known; the key's form repeats the question's link. */
export function keyPage(files: Files, asked: string, isRefused: boolean, reader: PageReader): string {
  const { say } = reader;
  const inLanguage = (language: PageReader['language']): string => {
    const query = new URLSearchParams(asked.split('?')[1] ?? '');
    query.set('lang', language);
    return `/?${query}`;
  };
  return documentOf(
    say('page.key.title'),
    files,
    reader,
    html`<header><a class="name" href="/">${say('page.shell.name')}</a>${languages(reader, inLanguage)}</header>
    <main><form id="key" method="post" action="/session">
      <h1>${say('page.key.yours')}</h1>
      ${hidden('asked', asked)}
      ${isRefused && html`<div class="problem" role="alert"><p>${say('page.key.refused')}</p></div>`}
      <label class="field"><span>${say('page.key.key')}</span><input type="password" name="key" required autocomplete="current-password"></label>
      <p><button type="submit" class="main">${say('page.key.let-me-in')}</button></p>
      <p class="aside">${say('page.key.once')}</p>
    </form></main>`,
  );
}

const ICON =
  "data:image/svg+xml,%3Csvg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 16 16'%3E%3Cpath d='M8 15V7M8 8C8 4 5 3 2 3c0 3 2 5 6 5Zm0-1c0-3 2-5 6-5 0 4-3 5-6 5Z' fill='%23356b32' stroke='%23356b32'/%3E%3C/svg%3E";

const documentOf = (
  title: string,
  { script, style, messages }: Files,
  { say, locale }: PageReader,
  body: Html,
): string =>
  html`<!doctype html>
<html lang="${locale}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${title} · ${say('page.shell.name')}</title>
<link rel="icon" href="${ICON}">
<link rel="stylesheet" href="${style}">
<link rel="modulepreload" id="messages" href="${messages}">
<script type="module" src="${script}"></script>
</head>
<body>
<a class="skip" href="#answer">${say('page.shell.to-answer')}</a>
${body}
</body>
</html>
`.markup;
