import type { ChangesWire } from '../../contract/kept.js';
import type { ReportWire } from '../../contract/readings.js';
import { actForm, fileAgain } from '../form/act.js';
import { bedField } from '../form/bed-field.js';
import { textField } from '../form/fields.js';
import { foldedForm } from '../form/folded-form.js';
import { linkTo } from '../form/question.js';
import { get, isRefused, pathWith, unusable } from '../shell/api.js';
import { type Html, html } from '../shell/html.js';
import { bedNamed } from '../shell/shelf.js';
import type { Act, Asked } from '../shell/view.js';
import { plural } from '../shell/words.js';
import { checkRequest } from '../sowing/file-check.js';
import { fileQuery } from '../sowing/forecast-request.js';

const ABOUT_FILE = { act: 'keep-readings', about: 'file' } as const;

/** The form that keeps what a file says with a bed, whatever sowing is asked of it. */
export function readingsForm(asked: Asked): Html {
  const { question, shelf, file } = asked;
  if (shelf.beds.length === 0) {
    return html`<p class="aside on-screen">To have this file at hand the next time, <a href="${linkTo({ ...question, view: 'growing' })}">keep the bed</a> first.</p>`;
  }
  const form = actForm(asked, {
    ...ABOUT_FILE,
    button: 'Keep it',
    fields: (typed) => html`
      <p>It need not be sent again then: readings of the soil go with the bed, days of the air with its place, where three years of them tell when to sow. What is sent again takes the place of what was kept of its time and depth.</p>
      ${bedField(shelf, typed('bed', question.bed))}
      ${textField('probeDepthCm', 'How deep in the soil, in cm', typed('probeDepthCm', question.probeDepthCm), { isNumber: true, size: 'short', hint: 'nothing: as the file says, else as deep as the seed' })}
      ${file && fileAgain(file)}`,
  });
  return foldedForm(form, asked, { ...ABOUT_FILE, name: 'Keep this file for a bed', look: 'add' });
}

/** Keeps the file where what it measured belongs; it is read as the question says. */
export const keepReadings: Act = async (said, { question, shelf, send, file }) => {
  const bed = bedNamed(shelf, said.get('bed') ?? '');
  if (!bed) return unusable('Choose the bed.');
  if (!file) return unusable('The file is not here any more. Choose it once more.');
  const reading = { ...question, bed: bed.id, probeDepthCm: said.get('probeDepthCm') ?? '' };
  const report = await get<ReportWire>(send, checkRequest(reading, shelf, file));
  if (isRefused(report)) return report;
  const isAir = report.value.medium === 'air';
  if (!isAir && isByDay(report.value)) return unusable(NO_DAYS_OF_SOIL);
  const path = isAir ? `/v1/places/${bed.place}/air` : `/v1/beds/${bed.id}/readings`;
  const got = await get<ChangesWire>(send, {
    method: 'POST',
    path: pathWith(path, fileQuery(reading)),
    file: file.body,
  });
  if (isRefused(got)) return got;
  return {
    value: {
      said: `Kept for ${bed.name}: ${changesSaid(got.value, isAir)}`,
      at: 'answer',
      goesOn: { bed: bed.id, source: 'bed' },
    },
  };
};

/** Are its stamps dates alone? */
const isByDay = ({ from }: ReportWire): boolean => from !== null && !from.includes('T');

const NO_DAYS_OF_SOIL =
  'This file tells of the soil by the day, and a bed keeps readings with their hours. If the logger can write those, choose that file; this one can be asked of as it is.';

/** As `421 readings: 400 new, 21 in place of others`. */
function changesSaid({ added, unchanged, replaced }: ChangesWire, isAir: boolean): string {
  const count = added + unchanged + replaced;
  const parts = [
    [added, 'new'],
    [replaced, 'in place of others'],
    [unchanged, 'kept already'],
  ] as const;
  const told = parts.flatMap(([some, what]) => (some > 0 ? [`${some} ${what}`] : []));
  return `${isAir ? plural(count, 'day of air', 'days of air') : plural(count, 'reading')}: ${told.join(', ')}`;
}
