import { carried } from '../form/carried.js';
import { optionsNamed, selectField } from '../form/fields.js';
import { type Html, html } from '../shell/html.js';
import { bedNamed } from '../shell/shelf.js';
import type { Asked } from '../shell/view.js';

/** Of which bed; what the other leaves ask goes along unseen. */
export const growingForm = ({ question, shelf }: Omit<Asked, 'send'>): Html =>
  html`
    ${selectField('ofBed', 'Bed', question.ofBed, [{ value: '', text: 'all beds' }, ...optionsNamed(shelf.beds)])}
    ${carried(question, ['ofBed'])}`;

export const growingAsked = ({ question, shelf }: Pick<Asked, 'question' | 'shelf'>): Html =>
  html`${question.ofBed === '' ? 'All beds' : (bedNamed(shelf, question.ofBed)?.name ?? 'A bed that is gone')}`;
