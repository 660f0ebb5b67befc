import { optionsNamed, radios, selectField, textField } from '../form/fields.js';
import { hiddenState } from '../form/hidden-state.js';
import type { Field } from '../form/question.js';
import { type Html, html } from '../shell/html.js';
import { cropName, cropNamed, todayAt } from '../shell/inventory.js';
import type { AskedQuestion } from '../shell/view.js';
import { dateInShort, numberText } from '../shell/words.js';
import { cropField, cropOptions } from '../sowing/sowing-form.js';
import { besideOf, MAX_BESIDE, spotOf } from './when-request.js';

const ASKED: readonly Field[] = ['crop', 'beside', 'from', 'sowing', 'seeds', 'depthCm', 'time', 'prefer'];

/** The form of a season: place, crop, first date. */
export function whenForm({ question, shelf, reader }: Omit<AskedQuestion, 'send'>): Html {
  const spot = spotOf(question, shelf);
  const { say } = reader;
  const beside = besideOf(question, shelf);
  const crops = cropOptions(shelf, reader);
  const isMore = [question.seeds, question.depthCm, question.time].some((one) => one !== '');
  return html`
    ${!spot?.near && selectField('bed', say('page.field.bed'), question.bed, [...optionsNamed(shelf.beds), { value: '', text: say('page.when.open-ground') }])}
    <div class="described">${
      spot?.near
        ? textField('near', say('page.field.town'), question.near, { hint: say('page.week.town-hint') })
        : shelf.places.length > 1
          ? selectField('place', say('page.field.at'), spot?.place.id ?? '', optionsNamed(shelf.places))
          : shelf.places[0] && html`<p>${say('page.when.at', { place: shelf.places[0].name })}</p>`
    }</div>
    ${cropField(question, shelf, reader)}
    <fieldset class="beside"><legend>${say('page.when.beside')}</legend>${Array.from(
      { length: MAX_BESIDE },
      (_, i) =>
        html`<select name="beside" aria-label="${say('page.when.beside-label', { number: i + 1 })}">${[
          { value: '', text: say(i === 0 ? 'page.when.no-other' : 'page.when.nor-another') },
          ...crops,
        ].map(
          ({ value, text }) =>
            html`<option value="${value}"${value === (beside[i] ?? '') && html` selected`}>${text}</option>`,
        )}</select>`,
    )}</fieldset>
    ${textField('from', say('page.field.from'), question.from, { type: 'date', hint: say('page.when.from-hint') })}
    ${textField('sowing', say('page.when.date'), question.sowing, { type: 'date', hint: say('page.when.date-hint') })}
    ${radios('prefer', say('page.when.best-is'), question.prefer, [
      { value: 'earliest', text: say('page.when.earliest') },
      { value: 'surest', text: say('page.when.surest') },
    ])}
    <details class="more"${isMore && html` open`}><summary>${say('page.when.more')}</summary>
      ${textField('seeds', say('page.field.seeds'), question.seeds, { isNumber: true, size: 'short', placeholder: '200' })}
      ${textField('depthCm', say('page.field.depth-cm'), question.depthCm, { isNumber: true, size: 'short', placeholder: numberText(cropNamed(shelf, question.crop)?.sowingDepthCm ?? 1.3, reader) })}
      ${textField('time', say('page.field.time'), question.time, { type: 'time', size: 'short' })}
    </details>
    ${hiddenState(question, spot?.near ? [...ASKED, 'near'] : [...ASKED, 'bed', 'place'])}`;
}

export function whenSummary({ question, shelf, reader }: Pick<AskedQuestion, 'question' | 'shelf' | 'reader'>): Html {
  const { say, tell } = reader;
  const { bed, place } = spotOf(question, shelf) ?? {};
  const where = bed?.name ?? (place ? say('page.when.ground-at', { place: place.name }) : say('page.when.no-place'));
  const today = todayAt(shelf, question.bed, place?.timeZone ?? '');
  const date = question.from === '' ? say('page.when.today') : dateInShort(question.from, reader, today);
  return tell('page.when.asked', { crop: cropName(shelf, question.crop, reader), where, date });
}
