import { linkTo } from '../form/question.js';
import { type Html, html } from '../shell/html.js';
import type { AnsweredView } from '../shell/view.js';
import type { PageReader } from '../shell/words.js';

/** Buttons for the link, for paper, and for the picture and numbers as files, as available. */
export const keepAndShare = (answered: AnsweredView | null, { say }: PageReader): Html | null => {
  const { link, isLinkCoarser, picture, table } = answered ?? {};
  if (!link && !picture && !table) return null;
  const asFile = (form: 'svg' | 'png' | 'csv', look: string): Html =>
    html`<button type="submit" form="ask" name="as" value="${form}" class="${look}">${say(`page.share.${form}`)}</button>`;
  return html`<h2>${say('page.share.title')}</h2>
    <p class="row">${
      link
        ? html`<a id="link" href="${linkTo(link)}">${say('page.share.link')}</a> <button type="button" id="copy" class="quiet needs-script">${say('page.share.copy')}</button>`
        : say('page.share.no-link')
    }</p>
    ${isLinkCoarser && html`<p class="aside">${say('page.share.coarser')}</p>`}
    <p class="row">
      <button type="button" id="print" class="quiet needs-script">${say('page.share.print')}</button>
      ${picture && asFile('svg', 'quiet')}
      ${picture && asFile('png', 'quiet needs-script')}
      ${table && asFile('csv', 'quiet')}
    </p>`;
};
