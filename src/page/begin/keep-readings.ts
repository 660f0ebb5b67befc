import type { ChangesWire } from '../../contract/kept.js';
import type { ReportWire } from '../../contract/readings.js';
import { actionForm, fileAgain } from '../form/action.js';
import { bedField } from '../form/bed-field.js';
import { textField } from '../form/fields.js';
import { foldedForm } from '../form/folded-form.js';
import { linkTo } from '../form/question.js';
import { get, isFailure, pathWith, unusable } from '../shell/api.js';
import { type Html, html } from '../shell/html.js';
import { bedNamed } from '../shell/inventory.js';
import type { ActionOf, AskedQuestion } from '../shell/view.js';
import type { PageReader } from '../shell/words.js';
import { checkRequest } from '../sowing/file-check.js';
import { fileQuery } from '../sowing/forecast-request.js';

const ABOUT_FILE = { act: 'keep-readings', about: 'file' } as const;

/** The form that stores a file's readings with a bed, whatever sowing the file was chosen for. */
export function readingsForm(asked: AskedQuestion): Html {
  const { question, shelf, file, reader } = asked;
  const { say, tell } = reader;
  if (shelf.beds.length === 0) {
    const a = (text: Html): Html => html`<a href="${linkTo({ ...question, view: 'growing' })}">${text}</a>`;
    return html`<p class="aside on-screen">${tell('page.begin.bed-first', { a })}</p>`;
  }
  const form = actionForm(asked, {
    ...ABOUT_FILE,
    button: say('page.growing.keep-it'),
    fields: (typed) => html`
      <p>${say('page.begin.keep-file-why')}</p>
      ${bedField(shelf, typed('bed', question.bed), reader)}
      ${textField('probeDepthCm', say('page.begin.depth'), typed('probeDepthCm', question.probeDepthCm), { isNumber: true, size: 'short', hint: say('page.begin.depth-hint') })}
      ${file && fileAgain(file, reader)}`,
  });
  return foldedForm(form, asked, { ...ABOUT_FILE, name: say('page.begin.keep-file'), look: 'add' });
}

/** Stores the file with the bed or place that it measured, read as the question says. */
export const keepReadings: ActionOf = async (said, { question, shelf, send, file, reader }) => {
  const { say } = reader;
  const bed = bedNamed(shelf, said.get('bed') ?? '');
  if (!bed) return unusable(say('page.refused.no-bed'));
  if (!file) return unusable(say('page.begin.file-gone'));
  const reading = { ...question, bed: bed.id, probeDepthCm: said.get('probeDepthCm') ?? '' };
  const report = await get<ReportWire>(send, checkRequest(reading, shelf, file));
  if (isFailure(report)) return report;
  const isAir = report.value.medium === 'air';
  if (!isAir && isByDay(report.value)) return unusable(say('page.begin.no-days-of-soil'));
  const path = isAir ? `/v1/places/${bed.place}/air` : `/v1/beds/${bed.id}/readings`;
  const got = await get<ChangesWire>(send, {
    method: 'POST',
    path: pathWith(path, fileQuery(reading)),
    file: file.body,
  });
  if (isFailure(got)) return got;
  return {
    value: {
      said: say('page.done.kept-readings', { bed: bed.name, ...changesSaid(got.value, isAir, reader) }),
      at: 'answer',
      goesOn: { bed: bed.id, source: 'bed' },
    },
  };
};

/** True if the stamps are dates without times. */
const isByDay = ({ from }: ReportWire): boolean => from !== null && !from.includes('T');

/** Counts of what the upload changed, as `400 new, 21 in place of others`. */
function changesSaid({ added, unchanged, replaced }: ChangesWire, isAir: boolean, { say }: PageReader) {
  const parts = [
    [added, 'page.done.new'],
    [replaced, 'page.done.replaced'],
    [unchanged, 'page.done.unchanged'],
  ] as const;
  return {
    what: say(isAir ? 'page.of.air-days' : 'page.of.readings', { count: added + unchanged + replaced }),
    changes: parts.flatMap(([count, code]) => (count > 0 ? [say(code, { count })] : [])).join(', '),
  };
}
