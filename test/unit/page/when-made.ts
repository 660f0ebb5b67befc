import type { FastifyInstance } from 'fastify';
import { beds, comingDays, northReadings, pastAir, place } from '../../../src/demo/season.js';
import { type PageQuestion, questionFrom } from '../../../src/page/form/question.js';
import { get, isFailure, type Send } from '../../../src/page/shell/api.js';
import type { Html } from '../../../src/page/shell/html.js';
import { loadInventory } from '../../../src/page/shell/inventory.js';
import type { AskedQuestion } from '../../../src/page/shell/view.js';
import type { SeasonOfWindows } from '../../../src/page/when/when-season.js';
import { dateAfter } from '../plot/make.js';
import { readerIn } from './readers.js';

/** What a reader sees of it: no tags, and nothing of what a figure says when it is asked. */
export const seen = ({ markup }: Html): string =>
  markup
    .replaceAll(/<span popover.*?<\/button><\/span>/gs, '')
    .replaceAll(/<(?:svg|style).*?<\/(?:svg|style)>/gs, '')
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll('&#39;', "'")
    .replaceAll(/[\s\u2009\u202f\u00a0]+/g, ' ')
    .replaceAll(/ (?=[.,;:])/g, '');

/** Asks an app as the page does. */
export const sendTo =
  (app: FastifyInstance): Send =>
  async ({ method, path, json }) => {
    const response = await app.inject({
      method,
      url: path,
      ...(json === undefined ? {} : { payload: json as object }),
    });
    return { status: response.statusCode, body: response.json() };
  };

/** So many years are enough to tell a season, and told faster than all of the demo's. */
const YEARS = 5;

/** The demo's society: years of air, hot days ahead, a probe in the north bed. */
export async function keepDemo(send: Send): Promise<void> {
  const put = async (method: 'PUT' | 'POST', path: string, json: object): Promise<void> => {
    const got = await get(send, { method, path, json });
    if (isFailure(got)) throw new Error(got.problem.detail);
  };
  await put('PUT', '/v1/places/quillmere', place);
  await put('POST', '/v1/places/quillmere/air', { medium: 'air', unit: 'C', daily: pastAir().slice(-365 * YEARS) });
  await put('PUT', '/v1/places/quillmere/coming-days', { medium: 'air', origin: 'forecast', daily: comingDays });
  for (const [id, bed] of Object.entries(beds)) await put('PUT', `/v1/beds/${id}`, { place: 'quillmere', ...bed });
  await put('POST', '/v1/beds/north/readings', { medium: 'soil', probeDepthCm: 5, readings: northReadings() });
}

/** What the page is made from, of a link's query. */
export async function askedOf(send: Send, query: string): Promise<AskedQuestion & { question: PageQuestion }> {
  const shelf = await loadInventory(send);
  if (isFailure(shelf)) throw new Error(shelf.problem.detail);
  const question = questionFrom(new URLSearchParams(query), shelf.value);
  const reader = readerIn('en', question.degrees);
  return { question, file: null, shelf: shelf.value, reader, send, widths: [344] };
}

/** A season of so many dates from a first one on, all alike, with its windows and what is closed. */
export const madeSeason = (
  from: string,
  nDays: number,
  { windows, closed }: { windows: readonly (readonly [string, string])[]; closed: SeasonOfWindows['closed'] },
): SeasonOfWindows => ({
  best: windows[0] ? { date: windows[0][0], why: 'It is the earliest date.', grade: 'good', reasons: [] } : null,
  windows: windows.map(([start, to]) => ({
    from: start,
    to,
    sureness: 0.9,
    halfDays: null,
    stand: null,
    grade: 'good',
    harvest: null,
    risks: [],
  })),
  closed,
  dates: Array.from({ length: nDays }, (_, i) => ({
    date: dateAfter(from, i),
    sureness: 0.9,
    firstDays: null,
    halfDays: null,
    mostDays: null,
    stand: null,
    ifHeldAreLost: null,
    grade: 'good' as const,
    harvest: null,
  })),
});
