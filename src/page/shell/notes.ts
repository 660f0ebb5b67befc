import { type Html, html } from './html.js';

/** Notes, open or folded away. */
export const notes = (title: string, all: readonly { readonly text: string }[], isOpen = false): Html | false =>
  all.length > 0 &&
  (isOpen
    ? html`<section><h2>${title}</h2><ul>${all.map(({ text }) => html`<li>${text}</li>`)}</ul></section>`
    : html`<details><summary>${title}</summary><ul>${all.map(({ text }) => html`<li>${text}</li>`)}</ul></details>`);
