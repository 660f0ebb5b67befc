import { linkTo, type PageQuestion, type ViewName } from '../form/question.js';
import { type Html, html } from './html.js';
import { bedName, cropInSentence, type Inventory } from './inventory.js';
import type { PageReader } from './words.js';

/** Shown in place of an answer until something is asked: a button to a first answer, and links to the other views. */
export function opening(question: PageQuestion, shelf: Inventory, reader: PageReader): Html {
  const { say, tell } = reader;
  const first = say('page.opening.show', {
    crop: cropInSentence(shelf, question.crop, reader),
    bed: bedName(shelf, question.bed),
  });
  const to = (view: ViewName) => (text: Html) => html`<a href="${linkTo({ ...question, view })}">${text}</a>`;
  return html`<p class="opening">${say('page.opening.choose')}</p>
    <p><a class="main" href="${linkTo(question)}">${first}</a></p>
    <p>${tell('page.opening.not-sown', { a: to('when') })}</p>
    <p>${tell('page.opening.sown', { a: to('growing') })}</p>`;
}
