import { type Html, html } from '../shell/html.js';
import { hidden } from './fields.js';
import { type Field, fields, type PageQuestion } from './question.js';

/**
 * What this leaf does not ask but another does goes along unseen, so that nothing is lost on the way there and back. What
 * is empty says something too: of days their place, of others that they are not as usual.
 */
export const hiddenState = (question: PageQuestion, shown: readonly Field[]): Html =>
  html`${hidden('source', question.source)}${fields
    .filter((field) => !shown.includes(field))
    .map((field) => hidden(field, question[field]))}${question.days.map(
    ({ min, max }) => html`${hidden('min', min)}${hidden('max', max)}`,
  )}`;
