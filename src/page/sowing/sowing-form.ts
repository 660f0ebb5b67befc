import { bedFields, kindSaid, placeFields } from '../form/bed-fields.js';
import { hidden, optionsNamed, optionsOf, radios, selectField, textField } from '../form/fields.js';
import { linkTo, type Question } from '../form/question.js';
import { type Html, html } from '../shell/html.js';
import { bedNamed, cropName, cropNamed, type Shelf, todayAt } from '../shell/shelf.js';
import type { Asked, FileGiven } from '../shell/view.js';
import { dateInShort, daysLater, type Reader, weekday } from '../shell/words.js';
import { chooseAgain } from './file-state.js';

/** A week is asked for where nothing is typed yet. */
const USUAL_DAYS = 7;

/** What is asked of a sowing: which bed, which temperatures, which crop, when. */
export function sowingForm({ question, shelf, reader, file }: Omit<Asked, 'send'>): Html {
  const today = todayAt(shelf, question.bed, question.timeZone);
  const hasKept = shelf.beds.length > 0;
  return html`
    ${hasKept && whereFields(question, shelf)}
    ${temperatureFields(question, shelf, reader, today, file)}
    ${cropField(question, shelf)}
    ${textField('sowing', 'Sown on', question.sowing || today, { type: 'date' })}
    ${textField('seeds', 'How many seeds', question.seeds, {
      isNumber: true,
      size: 'short',
      hint: 'left out: told of a hundred',
    })}
    ${details(question, shelf)}
    ${!hasKept && whereFields(question, shelf)}`;
}

/** The bed by its name, or by what it is. */
export function sowingAsked({ question, shelf, reader }: Pick<Asked, 'question' | 'shelf' | 'reader'>): Html {
  const today = todayAt(shelf, question.bed, question.timeZone);
  const bed =
    question.bed === '' ? kindSaid(question.kind) : (bedNamed(shelf, question.bed)?.name ?? 'a bed that is gone');
  const from = { bed: '', file: '; by a thermometer’s file', days: '; by days typed in' }[question.source];
  return html`${cropName(shelf, question.crop)}${bed !== undefined && `, ${bed}`}, sown ${dateInShort(question.sowing || today, reader, today)}${from}`;
}

function details({ depthCm, time, countDays, crop }: Question, shelf: Shelf): Html {
  const isSaid = [depthCm, time, countDays].some((one) => one !== '');
  const usualCm = cropNamed(shelf, crop)?.sowingDepthCm ?? 1.3;
  return html`<details class="more"${isSaid && html` open`}><summary>Depth, hour, count</summary>
      ${textField('depthCm', 'Depth in cm', depthCm, { isNumber: true, size: 'short', hint: `left out: ${usualCm}` })}
      ${textField('time', 'Hour of sowing', time, { type: 'time', size: 'short', hint: 'left out: noon' })}
      ${textField('countDays', 'Days to the count', countDays, { isNumber: true, size: 'short', hint: 'left out: three weeks or more' })}
    </details>`;
}

export const cropField = (question: Question, { crops }: Shelf): Html =>
  selectField('crop', 'Crop', question.crop, optionsNamed([...crops].sort((a, b) => (a.name < b.name ? -1 : 1))));

/** A kept bed, or one that is described; the description shows only where it counts. */
function whereFields(question: Question, { beds }: Shelf): Html {
  if (beds.length === 0) {
    return html`${hidden('bed', '')}<details class="more"${question.timeZone === '' && html` open`}><summary>The bed, and where it is</summary>${described(question)}</details>
      <p class="aside">Sowing here again? <a href="${linkTo({ ...question, view: 'growing' })}">Keep the bed</a>, and it need not be described each time.</p>`;
  }
  return html`
    ${selectField('bed', 'Bed', question.bed, [...optionsNamed(beds), { value: '', text: 'another bed' }])}
    <fieldset class="described"><legend>That bed</legend>${described(question)}</fieldset>`;
}

const described = (question: Question): Html =>
  html`${bedFields(
    (field) => question[field],
    textField('roomC', 'Room in °C', question.roomC, { isNumber: true, size: 'short' }),
  )}${placeFields((field) => question[field], 'north is positive; needed for temperatures of the air')}`;

function temperatureFields(
  question: Question,
  shelf: Shelf,
  reader: Reader,
  today: string,
  file: FileGiven | null,
): Html {
  const bed = bedNamed(shelf, question.bed);
  return html`
    ${radios('source', 'Temperatures', question.source === 'bed' && !bed ? 'file' : question.source, [
      ...(shelf.beds.length > 0 ? [{ value: 'bed', text: 'what is kept of the bed' }] : []),
      { value: 'file', text: 'a thermometer’s file' },
      { value: 'days', text: 'days typed in' },
    ])}
    <div class="from-file">
      <label class="field"><span>File</span><input type="file" name="file"><small>A logger’s or a weather station’s, as it is.<span class="needs-script"> Or drop it anywhere on this page.</span></small></label>
      <label class="field"><span>Or paste what it wrote</span><textarea name="pasted" rows="4" spellcheck="false" autocomplete="off">
${file?.text}</textarea></label>
      <p id="sending" hidden><progress aria-label="Sending the file"></progress> <span id="sent"></span> <button type="button" id="stop" class="quiet">Stop</button></p>
      <div id="file-state" tabindex="-1" aria-live="polite">${file && chooseAgain(file)}</div>
      ${howRead(question)}
    </div>
    <fieldset class="from-days"><legend>Days</legend>${daysFields(question, reader, today)}</fieldset>
    <div class="from-sent">
      ${selectField(
        'medium',
        'The thermometer was',
        question.medium,
        optionsOf([
          ['', 'as the file says'],
          ['soil', 'in the soil'],
          ['air', 'in the air'],
        ]),
      )}
      <div class="in-soil">${textField('probeDepthCm', 'How deep, in cm', question.probeDepthCm, { isNumber: true, size: 'short', hint: 'nothing: as deep as the seed' })}</div>
      ${selectField(
        'unit',
        'It reads',
        question.unit,
        optionsOf([
          ['', 'as the file says'],
          ['C', '°C'],
          ['F', '°F'],
          ['K', 'kelvin'],
        ]),
      )}
    </div>`;
}

/** What a file may leave open: settled by a choice, or here. */
function howRead({ column, timeColumn, dateOrder, clock, decimalMark }: Question): Html {
  const isSaid = [column, timeColumn, dateOrder, clock, decimalMark].some((one) => one !== '');
  return html`<details class="more"${isSaid && html` open`}><summary>How the file is read</summary>
      ${textField('column', 'Column of the temperatures', column, { hint: 'its name, or its number from the left' })}
      ${textField('timeColumn', 'Column of the times', timeColumn)}
      ${selectField(
        'dateOrder',
        'Dates are written',
        dateOrder,
        optionsOf([
          ['', 'as the file shows'],
          ['dmy', 'day, month, year'],
          ['mdy', 'month, day, year'],
          ['ymd', 'year, month, day'],
        ]),
      )}
      ${selectField(
        'clock',
        'Its clock',
        clock,
        optionsOf([
          ['', 'as the file shows'],
          ['local', 'is changed in spring and autumn'],
          ['standard', 'shows standard time all year'],
          ['utc', 'shows UTC'],
        ]),
      )}
      ${selectField(
        'decimalMark',
        'Decimals follow',
        decimalMark,
        optionsOf([
          ['', 'as the file shows'],
          ['.', 'a point'],
          [',', 'a comma'],
        ]),
      )}
    </details>`;
}

function daysFields(question: Question, reader: Reader, today: string): Html {
  const first = question.firstDay || daysLater(today, -USUAL_DAYS);
  const days =
    question.days.length > 0 ? question.days : Array.from({ length: USUAL_DAYS }, () => ({ min: '', max: '' }));
  return html`${textField('firstDay', 'From', first, { type: 'date' })}
    <table class="days"><thead><tr><th scope="col">Day</th><th scope="col">Lowest</th><th scope="col">Highest</th></tr></thead><tbody>${days.map(
      ({ min, max }, i) => {
        const name = weekday(daysLater(first, i), reader);
        return html`<tr><th scope="row" lang="${reader.locale}">${name}</th><td><input name="min" value="${min}" inputmode="decimal" autocomplete="off" aria-label="Lowest on day ${i + 1}, ${name}"></td><td><input name="max" value="${max}" inputmode="decimal" autocomplete="off" aria-label="Highest on day ${i + 1}, ${name}"></td></tr>`;
      },
    )}</tbody></table>`;
}
