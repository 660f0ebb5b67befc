import type { ChangesWire } from '../http/schemas/kept.js';
import type { ReportWire } from '../http/schemas/readings.js';
import { actForm, unusable } from './act.js';
import { get, isRefused, pathWith } from './api.js';
import { hidden, selectField } from './fields.js';
import { checkRequest } from './file-check.js';
import { fileQuery } from './forecast-request.js';
import { type Html, html } from './html.js';
import { linkTo } from './question.js';
import { bedNamed } from './shelf.js';
import type { Act, Asked } from './view.js';
import { plural } from './words.js';

/** The form that keeps what a file says with a bed, whatever sowing is asked of it. */
export function readingsForm(asked: Asked): Html {
  const { question, shelf, file } = asked;
  if (shelf.beds.length === 0) {
    return html`<p class="aside">To have this file at hand the next time, <a href="${linkTo({ ...question, view: 'growing' })}">keep the bed</a> first.</p>`;
  }
  // A page without script sends the file along as text, where it could be shown as one.
  const text = file?.text;
  return html`<details class="add${text === undefined ? ' needs-script' : ''}" id="keep-readings"><summary>Keep this file for a bed</summary>${actForm(
    asked,
    {
      act: 'keep-readings',
      about: 'file',
      button: 'Keep it',
      fields: (typed) => html`
      <p>It need not be sent again then: readings of the soil go with the bed, those of the air with its place, where three years of them tell when to sow. What is there already is kept once.</p>
      ${selectField(
        'bed',
        'Bed',
        typed('bed', question.bed || (shelf.beds.length === 1 ? shelf.beds[0]!.id : '')),
        shelf.beds.map(({ id, name }) => ({ value: id, text: name })),
      )}
      ${text !== undefined && hidden('pasted', text)}`,
    },
  )}</details>`;
}

/** Keeps the file where what it measured belongs; it is read as the question says. */
export const keepReadings: Act = async (said, { question, shelf, send, file }) => {
  const bed = bedNamed(shelf, said.get('bed') ?? '');
  if (!bed) return unusable('Choose the bed.');
  if (!file) return unusable('The file is not here any more. Choose it once more.');
  const ofBed = { ...question, bed: bed.id };
  const report = await get<ReportWire>(send, checkRequest(ofBed, shelf, file));
  if (isRefused(report)) return report;
  const isAir = report.value.medium === 'air';
  const path = isAir ? `/v1/places/${bed.place}/air` : `/v1/beds/${bed.id}/readings`;
  const got = await get<ChangesWire>(send, {
    method: 'POST',
    path: pathWith(path, fileQuery(question)),
    file: file.body,
  });
  if (isRefused(got)) return got;
  const { added, unchanged, replaced } = got.value;
  const count = added + unchanged + replaced;
  const all = isAir ? plural(count, 'day of air', 'days of air') : plural(count, 'reading');
  return {
    value: {
      said: `Kept for ${bed.name}: ${all}, ${added === 0 ? 'none' : added} of them new`,
      at: 'answer',
      question: { ...ofBed, source: 'bed' },
    },
  };
};
