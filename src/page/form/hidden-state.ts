import { type Html, html } from '../shell/html.js';
import { hidden } from './fields.js';
import { type Field, fields, type PageQuestion } from './question.js';

/**
 * Hidden fields for what other views ask and this one does not, so that nothing is lost on the way there and back.
 * Empty fields count too: an empty day keeps its place, other empty fields differ from their defaults.
 */
export const hiddenState = (question: PageQuestion, shown: readonly Field[]): Html =>
  html`${hidden('source', question.source)}${fields
    .filter((field) => !shown.includes(field))
    .map((field) => hidden(field, question[field]))}${question.days.map(
    ({ min, max }) => html`${hidden('min', min)}${hidden('max', max)}`,
  )}`;
