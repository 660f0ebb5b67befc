import { selectField } from './fields.js';
import { type Html, html } from './html.js';
import { fields } from './question.js';
import type { Asked } from './view.js';

/** Which bed; what the other leaves ask goes along unseen. */
export function growingForm({ question, shelf }: Omit<Asked, 'send'>): Html {
  return html`
    ${selectField('ofBed', 'Bed', question.ofBed, [
      { value: '', text: 'all beds' },
      ...shelf.beds.map(({ id, name }) => ({ value: id, text: name })),
    ])}
    <input type="hidden" name="source" value="${question.source}">
    ${fields.filter((field) => field !== 'ofBed').map((field) => unseen(field, question[field]))}
    ${question.days.map(({ min, max }) => html`${unseen('min', min)}${unseen('max', max)}`)}`;
}

/** What is empty says something too: of days its place, of others that it is not as usual. */
const unseen = (name: string, value: string): Html => html`<input type="hidden" name="${name}" value="${value}">`;
