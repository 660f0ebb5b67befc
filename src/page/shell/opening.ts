import { linkTo, type Question } from '../form/question.js';
import { type Html, html } from './html.js';
import { bedName, cropName, type Shelf } from './shelf.js';

/** What stands in the answer's place as long as nothing is asked: one press to a first answer, and the ways to the other leaves. */
export const opening = (question: Question, shelf: Shelf): Html =>
  html`<p class="opening">Choose a bed, a crop and a day. You will see when it should come up, and how many seedlings to expect.</p>
    <p><a class="main" href="${linkTo(question)}">Show ${cropName(shelf, question.crop).toLowerCase()} in ${bedName(shelf, question.bed)}, sown today</a></p>
    <p>Not sown yet? <a href="${linkTo({ ...question, view: 'when' })}">Find a good day.</a></p>
    <p>Sown already? <a href="${linkTo({ ...question, view: 'growing' })}">See how your rows stand, and what to do.</a></p>`;
