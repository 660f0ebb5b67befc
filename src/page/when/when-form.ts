import { carried } from '../form/carried.js';
import { optionsNamed, radios, selectField, textField } from '../form/fields.js';
import { type Html, html } from '../shell/html.js';
import { cropName, cropNamed, todayAt } from '../shell/shelf.js';
import type { Asked } from '../shell/view.js';
import { dateInShort } from '../shell/words.js';
import { cropField } from '../sowing/sowing-form.js';
import { besideOf, MOST_BESIDE, spotOf } from './when-request.js';

const SHOWN = ['bed', 'place', 'crop', 'beside', 'from', 'sowing', 'seeds', 'depthCm', 'time', 'prefer'] as const;

/** What is asked of a season: where, which crop, from when on. */
export function whenForm({ question, shelf }: Omit<Asked, 'send'>): Html {
  const spot = spotOf(question, shelf);
  const crops = [...shelf.crops].sort((a, b) => (a.name < b.name ? -1 : 1));
  const beside = besideOf(question, shelf);
  const isMore = [question.seeds, question.depthCm, question.time].some((one) => one !== '');
  return html`
    ${selectField('bed', 'Bed', question.bed, [...optionsNamed(shelf.beds), { value: '', text: 'open ground' }])}
    <div class="described">${
      shelf.places.length > 1
        ? selectField('place', 'At', spot?.place.id ?? '', optionsNamed(shelf.places))
        : shelf.places[0] && html`<p>at ${shelf.places[0].name}</p>`
    }</div>
    ${cropField(question, shelf)}
    <fieldset class="beside"><legend>Set beside it</legend>${Array.from(
      { length: MOST_BESIDE },
      (_, i) =>
        html`<select name="beside" aria-label="Crop to set beside it, ${i + 1}">${[
          { id: '', name: i === 0 ? 'no other crop' : 'nor another' },
          ...crops,
        ].map(
          ({ id, name }) => html`<option value="${id}"${id === (beside[i] ?? '') && html` selected`}>${name}</option>`,
        )}</select>`,
    )}</fieldset>
    ${textField('from', 'From', question.from, { type: 'date', hint: 'nothing: today; a year is looked through' })}
    ${textField('sowing', 'Date to look at', question.sowing, { type: 'date', hint: 'nothing: the best one' })}
    ${radios('prefer', 'The best date is', question.prefer, [
      { value: 'earliest', text: 'the earliest that is sure' },
      { value: 'surest', text: 'the surest of all' },
    ])}
    <details class="more"${isMore && html` open`}><summary>Seeds, depth and hour</summary>
      ${textField('seeds', 'How many seeds', question.seeds, { isNumber: true, size: 'short', placeholder: '200' })}
      ${textField('depthCm', 'Depth in cm', question.depthCm, { isNumber: true, size: 'short', placeholder: String(cropNamed(shelf, question.crop)?.sowingDepthCm ?? 1.3) })}
      ${textField('time', 'Hour of sowing', question.time, { type: 'time', size: 'short' })}
    </details>
    ${carried(question, SHOWN)}`;
}

export function whenAsked({ question, shelf, reader }: Pick<Asked, 'question' | 'shelf' | 'reader'>): Html {
  const { bed, place } = spotOf(question, shelf) ?? {};
  const where = bed?.name ?? (place ? `open ground at ${place.name}` : 'no place yet');
  const today = todayAt(shelf, question.bed, place?.timeZone ?? '');
  const from = question.from === '' ? 'today' : dateInShort(question.from, reader, today);
  return html`${cropName(shelf, question.crop)}, ${where}, from ${from} on`;
}
