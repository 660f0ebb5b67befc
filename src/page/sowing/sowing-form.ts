import { bedFields, kindSaid, placeFields } from '../form/bed-fields.js';
import { hidden, type Option, optionsNamed, radios, selectField, textField } from '../form/fields.js';
import { linkTo, type PageQuestion } from '../form/question.js';
import { type Html, html } from '../shell/html.js';
import { bedNamed, cropName, cropNamed, type Inventory, todayAt } from '../shell/inventory.js';
import type { AskedQuestion, FileGiven } from '../shell/view.js';
import { dateInShort, daysLater, numberText, type PageReader, weekday } from '../shell/words.js';
import { chooseAgain } from './file-state.js';

/** Empty rows for days when nothing is typed yet: a week. */
const DEFAULT_DAYS = 7;

/** The form of a sowing: bed, temperatures, crop, date. */
export function sowingForm({ question, shelf, reader, file }: Omit<AskedQuestion, 'send'>): Html {
  const today = todayAt(shelf, question.bed, question.timeZone);
  const hasKept = shelf.beds.length > 0;
  const { say } = reader;
  return html`
    ${hasKept && whereFields(question, shelf, reader)}
    ${temperatureFields(question, shelf, reader, today, file)}
    ${cropField(question, shelf, reader)}
    ${textField('sowing', say('page.field.sowing'), question.sowing || today, { type: 'date' })}
    ${textField('seeds', say('page.field.seeds'), question.seeds, {
      isNumber: true,
      size: 'short',
      hint: say('page.field.seeds-hint'),
    })}
    ${details(question, shelf, reader)}
    ${!hasKept && whereFields(question, shelf, reader)}`;
}

/** The bed's name, or its description. */
export function sowingSummary({ question, shelf, reader }: Pick<AskedQuestion, 'question' | 'shelf' | 'reader'>): Html {
  const today = todayAt(shelf, question.bed, question.timeZone);
  const bed =
    question.bed === ''
      ? kindSaid(question.kind, reader)
      : (bedNamed(shelf, question.bed)?.name ?? reader.say('page.sowing.bed-gone'));
  return reader.tell('page.sowing.asked', {
    crop: cropName(shelf, question.crop, reader),
    bed,
    date: dateInShort(question.sowing || today, reader, today),
    source: question.source,
  });
}

function details({ depthCm, time, countDays, crop }: PageQuestion, shelf: Inventory, reader: PageReader): Html {
  const { say } = reader;
  const isSaid = [depthCm, time, countDays].some((one) => one !== '');
  const usualCm = cropNamed(shelf, crop)?.sowingDepthCm ?? 1.3;
  return html`<details class="more"${isSaid && html` open`}><summary>${say('page.field.more')}</summary>
      ${textField('depthCm', say('page.field.depth-cm'), depthCm, { isNumber: true, size: 'short', hint: say('page.field.left-out', { value: numberText(usualCm, reader) }) })}
      ${textField('time', say('page.field.time'), time, { type: 'time', size: 'short', hint: say('page.field.time-hint') })}
      ${textField('countDays', say('page.field.count-days'), countDays, { isNumber: true, size: 'short', hint: say('page.field.count-days-hint') })}
    </details>`;
}

export const cropField = (question: PageQuestion, shelf: Inventory, reader: PageReader): Html =>
  selectField('crop', reader.say('page.field.crop'), question.crop, cropOptions(shelf, reader));

/** All crops by name. */
export const cropOptions = (shelf: Inventory, reader: PageReader): Option[] =>
  shelf.crops
    .map(({ id }) => ({ value: id, text: cropName(shelf, id, reader) }))
    .sort((a, b) => a.text.localeCompare(b.text, reader.language));

/** A stored or a described bed; the description shows only when it counts. */
function whereFields(question: PageQuestion, { beds }: Inventory, reader: PageReader): Html {
  const { say, tell } = reader;
  if (beds.length === 0) {
    const toKeep = (text: Html): Html => html`<a href="${linkTo({ ...question, view: 'growing' })}">${text}</a>`;
    return html`${hidden('bed', '')}<details class="more"${question.timeZone === '' && html` open`}><summary>${say('page.field.bed-and-where')}</summary>${described(question, reader)}</details>
      <p class="aside">${tell('page.field.keep-bed-first', { a: toKeep })}</p>`;
  }
  const another = { value: '', text: say('page.field.another-bed') };
  return html`
    ${selectField('bed', say('page.field.bed'), question.bed, [...optionsNamed(beds), another])}
    <fieldset class="described"><legend>${say('page.field.that-bed')}</legend>${described(question, reader)}</fieldset>`;
}

const described = (question: PageQuestion, reader: PageReader): Html =>
  html`${bedFields(
    (field) => question[field],
    textField('roomC', reader.say('page.field.room-c'), question.roomC, { isNumber: true, size: 'short' }),
    reader,
  )}${placeFields((field) => question[field], reader, 'latitude-air-hint')}`;

function temperatureFields(
  question: PageQuestion,
  shelf: Inventory,
  reader: PageReader,
  today: string,
  file: FileGiven | null,
): Html {
  const { say } = reader;
  const bed = bedNamed(shelf, question.bed);
  const sources = (['bed', 'file', 'days'] as const).filter((source) => source !== 'bed' || shelf.beds.length > 0);
  return html`
    ${radios(
      'source',
      say('page.sowing.temperatures'),
      question.source === 'bed' && !bed ? 'file' : question.source,
      sources.map((value) => ({ value, text: say(`page.sowing.source.${value}`) })),
    )}
    <div class="from-file">
      <label class="field"><span>${say('page.file.file')}</span><input type="file" name="file"><small>${say('page.file.hint')}<span class="needs-script"> ${say('page.file.drop')}</span></small></label>
      <label class="field"><span>${say('page.file.paste')}</span><textarea name="pasted" rows="4" spellcheck="false" autocomplete="off">
${file?.text}</textarea></label>
      <p id="sending" hidden><progress aria-label="${say('page.file.sending')}"></progress> <span id="sent"></span> <button type="button" id="stop" class="quiet">${say('page.file.stop')}</button></p>
      <div id="file-state" tabindex="-1" aria-live="polite">${file && chooseAgain(file, reader)}</div>
      ${howRead(question, reader)}
    </div>
    <fieldset class="from-days"><legend>${say('page.file.days')}</legend>${daysFields(question, reader, today)}</fieldset>
    <div class="from-sent">
      ${selectField('medium', say('page.file.medium'), question.medium, [
        { value: '', text: say('page.file.medium.said') },
        { value: 'soil', text: say('page.file.medium.soil') },
        { value: 'air', text: say('page.file.medium.air') },
      ])}
      <div class="in-soil">${textField('probeDepthCm', say('page.file.depth'), question.probeDepthCm, { isNumber: true, size: 'short', hint: say('page.file.depth-hint') })}</div>
      ${selectField('unit', say('page.file.unit'), question.unit, [
        { value: '', text: say('page.file.medium.said') },
        { value: 'C', text: '°C' },
        { value: 'F', text: '°F' },
        { value: 'K', text: say('page.file.kelvin') },
      ])}
    </div>`;
}

/** Fields that settle what a file leaves open; choices may settle it as well. */
function howRead({ column, timeColumn, dateOrder, clock, decimalMark }: PageQuestion, { say }: PageReader): Html {
  const isSaid = [column, timeColumn, dateOrder, clock, decimalMark].some((one) => one !== '');
  const asShown = { value: '', text: say('page.file.as-shown') };
  return html`<details class="more"${isSaid && html` open`}><summary>${say('page.file.how-read')}</summary>
      ${textField('column', say('page.file.column'), column, { hint: say('page.file.column-hint') })}
      ${textField('timeColumn', say('page.file.time-column'), timeColumn)}
      ${selectField('dateOrder', say('page.file.date-order'), dateOrder, [
        asShown,
        ...(['dmy', 'mdy', 'ymd'] as const).map((value) => ({ value, text: say(`page.file.${value}`) })),
      ])}
      ${selectField('clock', say('page.file.clock'), clock, [
        asShown,
        ...(['local', 'standard', 'utc'] as const).map((value) => ({ value, text: say(`page.file.clock.${value}`) })),
      ])}
      ${selectField('decimalMark', say('page.file.decimals'), decimalMark, [
        asShown,
        { value: '.', text: say('page.file.point') },
        { value: ',', text: say('page.file.comma') },
      ])}
    </details>`;
}

function daysFields(question: PageQuestion, reader: PageReader, today: string): Html {
  const { say } = reader;
  const first = question.firstDay || daysLater(today, -DEFAULT_DAYS);
  const days =
    question.days.length > 0 ? question.days : Array.from({ length: DEFAULT_DAYS }, () => ({ min: '', max: '' }));
  const rows = days.map(({ min, max }, i) => {
    const on = { day: i + 1, weekday: weekday(daysLater(first, i), reader) };
    return html`<tr><th scope="row" lang="${reader.locale}">${on.weekday}</th><td><input name="min" value="${min}" inputmode="decimal" autocomplete="off" aria-label="${say('page.file.lowest-on', on)}"></td><td><input name="max" value="${max}" inputmode="decimal" autocomplete="off" aria-label="${say('page.file.highest-on', on)}"></td></tr>`;
  });
  return html`${textField('firstDay', say('page.field.from'), first, { type: 'date' })}
    <table class="days"><thead><tr><th scope="col">${say('page.file.day')}</th><th scope="col">${say('page.file.lowest')}</th><th scope="col">${say('page.file.highest')}</th></tr></thead><tbody>${rows}</tbody></table>`;
}
