import { actionForm, NEW, type Typed } from '../form/action.js';
import { bedField } from '../form/bed-field.js';
import { radios, textField } from '../form/fields.js';
import { type Html, html } from '../shell/html.js';
import { todayAt } from '../shell/inventory.js';
import type { AskedQuestion } from '../shell/view.js';
import { cropField } from '../sowing/sowing-form.js';
import type { KeptSowing } from './growing-found.js';

/** The form for a new sowing: bed, crop, date, seeds and method. */
export function sowForm(asked: AskedQuestion): Html {
  const { question, shelf } = asked;
  const usual = {
    bed: '',
    crop: question.crop,
    date: todayAt(shelf, question.ofBed || (shelf.beds[0]?.id ?? ''), ''),
    seeds: '',
    method: 'direct',
  };
  return actionForm(asked, {
    act: 'sow',
    about: NEW,
    button: asked.reader.say('page.growing.keep-it'),
    fields: (typed) => sowTexts(typed, usual, asked),
  });
}

/** The form that changes the stored fields of a sowing. */
export const changeSowingForm = (
  { id, crop, seeds, ...kept }: KeptSowing & { readonly crop: string },
  asked: AskedQuestion,
) =>
  actionForm(asked, {
    act: 'change-sowing',
    about: id,
    button: asked.reader.say('page.growing.change-it'),
    fields: (typed) => sowTexts(typed, { ...kept, crop, seeds: seeds === null ? '' : String(seeds) }, asked),
  });

type SowText = 'bed' | 'crop' | 'date' | 'seeds' | 'method';

const sowTexts = (typed: Typed, usual: Readonly<Record<SowText, string>>, asked: AskedQuestion): Html => html`
  ${bedField(asked.shelf, typed('bed', usual.bed) || asked.question.ofBed, asked.reader)}
  ${cropField({ ...asked.question, crop: typed('crop', usual.crop) }, asked.shelf, asked.reader)}
  ${textField('date', asked.reader.say('page.field.sowing'), typed('date', usual.date), { type: 'date', size: 'short' })}
  ${textField('seeds', asked.reader.say('page.field.seeds'), typed('seeds', usual.seeds), { isNumber: true, size: 'short' })}
  ${radios('method', asked.reader.say('page.growing.where-label'), typed('method', usual.method), [
    { value: 'direct', text: asked.reader.say('page.growing.direct') },
    { value: 'indoors', text: asked.reader.say('page.growing.indoors') },
  ])}`;
