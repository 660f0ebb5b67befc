import { type Html, html } from './html.js';
import { saidText } from './said-text.js';
import type { Reader } from './words.js';

/** Notes, open or folded away. */
export const notes = (
  title: string,
  all: readonly { readonly text: string }[],
  reader: Reader,
  isOpen = false,
): Html | false =>
  all.length > 0 &&
  (isOpen
    ? html`<section><h2>${title}</h2><ul>${all.map(({ text }) => html`<li>${saidText(text, reader)}</li>`)}</ul></section>`
    : html`<details><summary>${title}</summary><ul>${all.map(({ text }) => html`<li>${saidText(text, reader)}</li>`)}</ul></details>`);
