import { optionsNamed, selectField } from '../form/fields.js';
import { hiddenState } from '../form/hidden-state.js';
import { type Html, html } from '../shell/html.js';
import { bedNamed } from '../shell/inventory.js';
import type { AskedQuestion } from '../shell/view.js';

/** Choice of a bed; the other views' fields are hidden. */
export const growingForm = ({ question, shelf, reader }: Omit<AskedQuestion, 'send'>): Html =>
  html`
    ${selectField('ofBed', reader.say('page.field.bed'), question.ofBed, [{ value: '', text: reader.say('page.growing.all-beds') }, ...optionsNamed(shelf.beds)])}
    ${hiddenState(question, ['ofBed'])}`;

export const growingSummary = ({
  question,
  shelf,
  reader,
}: Pick<AskedQuestion, 'question' | 'shelf' | 'reader'>): Html =>
  html`${
    question.ofBed === ''
      ? reader.say('page.growing.asked-all')
      : (bedNamed(shelf, question.ofBed)?.name ?? reader.say('page.growing.bed-gone'))
  }`;
