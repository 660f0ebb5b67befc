import { hidden } from './fields.js';
import { type Html, html } from './html.js';
import { type Field, fields, type Question } from './question.js';

/** What this leaf does not ask but another does goes along unseen, so that nothing is lost on the way there and back. */
export const carried = (question: Question, shown: readonly Field[]): Html =>
  html`${question.source !== 'bed' && hidden('source', question.source)}${fields
    .filter((field) => !shown.includes(field))
    .map((field) => hidden(field, question[field]))}${question.days.map(
    ({ min, max }) =>
      html`<input type="hidden" name="min" value="${min}"><input type="hidden" name="max" value="${max}">`,
  )}`;
