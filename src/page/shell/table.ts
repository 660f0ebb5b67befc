import { type Html, type HtmlPart, html } from './html.js';

/** A table that scrolls when wider than the screen, by keyboard too. */
export const tableOf = (name: string, columns: readonly HtmlPart[], rows: readonly Html[]): Html =>
  html`<div class="scroll" tabindex="0" role="region" aria-label="${name}"><table>
    <thead><tr>${columns.map((column) => html`<th scope="col">${column}</th>`)}</tr></thead>
    <tbody>${rows}</tbody></table></div>`;
