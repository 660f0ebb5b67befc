import type { ForecastAnswer } from '../../contract/forecast.js';
import { keepReadings, readingsForm } from '../begin/keep-readings.js';
import { actionOf } from '../form/action.js';
import { linkTo, MAX_DAYS, MAX_LINK, type PageQuestion } from '../form/question.js';
import { get, isFailure } from '../shell/api.js';
import { type Html, html } from '../shell/html.js';
import { todayAt } from '../shell/inventory.js';
import { problemNote } from '../shell/problem-note.js';
import type { AnsweredView, AskedQuestion, View } from '../shell/view.js';
import { daysFrom, daysLater, type PageReader } from '../shell/words.js';
import { forecastPictures, forecastToKeep } from './forecast-picture.js';
import { forecastRequest } from './forecast-request.js';
import { forecastTable } from './forecast-table.js';
import { sowingAnswer } from './sowing-answer.js';
import { sowingForm, sowingSummary } from './sowing-form.js';

/** The view of one sowing's forecast. */
export const sowingView: View = {
  name: 'sowing',
  title: 'page.sowing.title',
  fileName: 'forecast',
  form: sowingForm,
  summary: sowingSummary,
  answer,
  runAction: actionOf(new Map([['keep-readings', keepReadings]])),
};

async function answer(asked: AskedQuestion): Promise<AnsweredView | null> {
  const { file, send } = asked;
  const question = withDate(asked);
  if (question.source === 'bed' && question.bed === '') return null;
  if (question.source === 'file' && !file) return null;
  const asking = forecastRequest(question, file, asked.reader);
  if ('problem' in asking) return { shown: problemNote(asking.problem, asked.reader) };
  const got = await get<ForecastAnswer>(send, asking.request);
  const toKeep = question.source === 'file' && readingsForm(asked);
  if (isFailure(got)) {
    const { problem } = got;
    return { shown: html`${problemNote(problem, asked.reader)}${READ_ALL_THE_SAME.has(problem.code) && toKeep}` };
  }
  const forecast = got.value;
  const link = linkable(question, forecast);
  return {
    shown: html`${sowingAnswer(forecast, asked, forecastPictures(forecast, asked))}${toKeep}${question.bed !== '' && inOtherYears(question, asked.reader)}`,
    picture: () => forecastToKeep(forecast, asked),
    table: () => forecastTable(forecast, asked.reader),
    ...(link && linkTo(link).length <= MAX_LINK ? { link, isLinkCoarser: link !== question } : {}),
  };
}

/** A forecast says what a sowing does, not whether it is wise: frost may follow. */
const inOtherYears = (question: PageQuestion, { tell }: PageReader): Html =>
  html`<p class="on-screen">${tell('page.sowing.other-years', {
    a: (text) => html`<a href="${linkTo({ ...question, view: 'when' })}">${text}</a>`,
  })}</p>`;

/** Refusals of a readable file that holds too little for this sowing. */
const READ_ALL_THE_SAME: ReadonlySet<string> = new Set([
  'no-latitude',
  'starts-after-sowing',
  'ends-too-early',
  'too-few-readings',
  'gap-too-long',
]);

/** The sowing date defaults to today. */
const withDate = ({ question, shelf }: AskedQuestion): PageQuestion => ({
  ...question,
  sowing: question.sowing || todayAt(shelf, question.bed, question.timeZone),
});

/** The question with a file's days in place of the file; undefined for a file of daily means alone. */
function linkable(question: PageQuestion, { understood: [report] }: ForecastAnswer): PageQuestion | undefined {
  if (question.source !== 'file') return question;
  const daily = report?.series.daily ?? [];
  if (!report || daily.length === 0 || daily.some(({ min, max }) => min === undefined || max === undefined))
    return undefined;
  const first = [daily[0]!.date, daysLater(question.sowing, -DAYS_BEFORE)].sort().at(-1)!;
  const byDate = new Map(daily.map((one) => [one.date, one]));
  const count = Math.max(0, Math.min(MAX_DAYS, daysFrom(first, daily.at(-1)!.date) + 1));
  return {
    ...question,
    source: 'days',
    medium: report.medium,
    probeDepthCm: report.probeDepthCm === undefined ? '' : String(report.probeDepthCm),
    unit: 'C',
    timeZone: question.timeZone || (question.bed === '' ? report.timeZone : ''),
    firstDay: first,
    days: Array.from({ length: count }, (_, i) => {
      const one = byDate.get(daysLater(first, i));
      return { min: String(one?.min ?? ''), max: String(one?.max ?? '') };
    }),
  };
}

/** Days before the sowing that a link includes, because the soil remembers them. */
const DAYS_BEFORE = 60;
