import { linkTo } from '../form/question.js';
import { type Html, html } from '../shell/html.js';
import type { Answered } from '../shell/view.js';

/** The question as a link, the answer on paper, the picture and the numbers as files: what there is of them. */
export const keepAndShare = (answered: Answered | null): Html | null => {
  const { link, isLinkCoarser, picture, table } = answered ?? {};
  if (!link && !picture && !table) return null;
  return html`<h2>Keep and share</h2>
    <p class="row">${
      link
        ? html`<a id="link" href="${linkTo(link)}">This question as a link</a> <button type="button" id="copy" class="quiet needs-script">Copy the link</button>`
        : 'These temperatures have no highest and lowest by the day, or too many days, so no link can hold them.'
    }</p>
    ${isLinkCoarser && html`<p class="aside">The link holds the days’ lowest and highest instead of the file: by it the dates can come out a day apart, and hot hours otherwise.</p>`}
    <p class="row">
      <button type="button" id="print" class="quiet needs-script">Print</button>
      ${picture && html`<button type="submit" form="ask" name="as" value="svg" class="quiet">Picture as SVG</button>`}
      ${picture && html`<button type="submit" form="ask" name="as" value="png" class="quiet needs-script">Picture as PNG</button>`}
      ${table && html`<button type="submit" form="ask" name="as" value="csv" class="quiet">Numbers as CSV</button>`}
    </p>`;
};
