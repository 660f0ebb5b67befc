import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import ajvFormats from 'ajv-formats';
import type { FastifyInstance, LightMyRequestResponse } from 'fastify';
import type { ForecastAnswer } from '../../src/contract/forecast.js';
import type { CheckAnswer } from '../../src/contract/readings.js';
import type { SoilAnswer } from '../../src/contract/soil.js';
import { dateAfter, startApp } from './helper.js';
import { type DocumentedOperation, type OpenApiDocument, operationsOf } from './openapi-arbitraries.js';

/** No question may keep the service busy for longer, even on a slow machine. */
export const LONGEST_MS = 5000;

export const app: FastifyInstance = await startApp();
export const document: OpenApiDocument = (await app.inject('/openapi.json')).json();
export const operations = operationsOf(document);

/** One request, small enough to be printed and sent again. */
export interface Sent {
  readonly method: DocumentedOperation['method'];
  readonly url: string;
  readonly contentType?: string;
  readonly payload?: string;
}

const ajv = new Ajv2020({ strict: false });
ajvFormats.default(ajv);
const isProblem = ajv.compile(document.components.schemas.Problem!);
const isAnswerOf = new Map<string, ValidateFunction>();
for (const { operationId, responses } of operations) {
  const json = responses['200']?.content['application/json'];
  if (json) isAnswerOf.set(operationId, ajv.compile(json.schema));
}

const mediaTypeOf = ({ headers }: LightMyRequestResponse): string =>
  String(headers['content-type'] ?? '').split(';', 1)[0]!;

/** Everything that is wrong with an answer, in words. */
export function faultsOf({ operationId, responses }: DocumentedOperation, response: LightMyRequestResponse): string[] {
  const { statusCode, body } = response;
  const saw = `${statusCode} ${mediaTypeOf(response)}: ${body.slice(0, 500)}`;
  if (statusCode >= 500 || statusCode < 200 || (statusCode >= 300 && statusCode < 400)) return [saw];
  if (statusCode >= 400) {
    const isRight = mediaTypeOf(response) === 'application/problem+json' && isProblem(JSON.parse(body));
    return isRight && /\w/.test(JSON.parse(body).detail) ? [] : [saw, ajv.errorsText(isProblem.errors)];
  }
  if (!responses[statusCode]) return [saw];
  if (statusCode === 204) return body === '' ? [] : [saw];
  const [mediaType] = Object.keys(responses[statusCode]!.content);
  if (mediaTypeOf(response) !== mediaType) return [saw];
  const isAnswer = isAnswerOf.get(operationId);
  if (!isAnswer || mediaType !== 'application/json') return body === '' ? ['an empty body'] : [];
  const answer: unknown = JSON.parse(body);
  if (!isAnswer(answer)) return [ajv.errorsText(isAnswer.errors), saw];
  if (operationId === 'forecast') return lawsBrokenBy(answer as ForecastAnswer);
  if (operationId === 'soilTemperatures') return lawsBrokenBySoil(answer as SoilAnswer);
  if (operationId === 'checkReadings') return lawsBrokenByCheck(answer as CheckAnswer);
  return [];
}

/** Names of the laws that do not hold. */
const brokenAmong = (laws: Readonly<Record<string, boolean>>): string[] =>
  Object.entries(laws).flatMap(([law, holds]) => (holds ? [] : [law]));

function lawsBrokenBy(answer: ForecastAnswer): string[] {
  const { first, half, most } = answer.emergence;
  const milestones = [first, half, most].flatMap((one) => ('why' in one ? [] : [one]));
  const { laboratory, ifHeldAreLost, field, seedlings, by } = answer.stand;
  const spells = [...(answer.hotSpells ?? []), ...(answer.coldSpells ?? [])];
  const { daily, hourly, keepMoist, sowing, countDays } = answer;
  const instants = (hourly?.readings ?? []).map(({ at }) => Date.parse(at));
  return brokenAmong({
    'all of first, half and most come, or none does': milestones.length % 3 === 0,
    'first, half and most come in this order': milestones.every(
      (one, i) => i === 0 || (milestones[i - 1]!.date <= one.date && milestones[i - 1]!.days <= one.days),
    ),
    'the range holds the date': milestones.every(
      ({ date, range }) => range.from <= date && (range.to === null || date <= range.to),
    ),
    'inBeds runs forward': milestones.every(({ inBeds }) => inBeds.from <= inBeds.to),
    'nothing is up before the sowing': milestones.every(({ date, days }) => date >= sowing.date && days >= 0),
    '0 <= ifHeldAreLost <= laboratory <= 100': 0 <= ifHeldAreLost && ifHeldAreLost <= laboratory && laboratory <= 100,
    'field runs upward': 0 <= field.from && field.from <= field.to,
    'seedlings run upward and are no more than the seeds':
      seedlings === undefined || (seedlings.from <= seedlings.to && seedlings.to <= (sowing.seeds ?? 0)),
    'the count is so many days after the sowing': by === dateAfter(sowing.date, countDays),
    'keepMoist runs forward': keepMoist.from <= keepMoist.to,
    'daily dates follow one another': daily.every(
      ({ date }, i) => i === 0 || date === dateAfter(daily[i - 1]!.date, 1),
    ),
    'daily dates lie between sowing and count': daily.every(({ date }) => date >= sowing.date && date <= by),
    'emergedPercent never falls': daily.every(
      ({ emergedPercent }, i) => i === 0 || daily[i - 1]!.emergedPercent <= emergedPercent,
    ),
    'no day has more than the laboratory stand': daily.every(({ emergedPercent }) => emergedPercent <= laboratory),
    'each day has min <= mean <= max': daily.every(({ min, mean, max }) => min <= mean && mean <= max),
    'no day has more than 25 hot hours': daily.every(({ hotHours }) => hotHours >= 0 && hotHours <= 25),
    'hours are an hour apart, and as many as the days have':
      instants.every((ms, i) => i === 0 || ms - instants[i - 1]! === 3_600_000) &&
      (!hourly || Math.abs(instants.length / 24 - daily.length) <= 1.1),
    'a spell has six hours or more': spells.every(({ hours, days }) => hours >= 6 && hours <= 25 * days),
    'a spell runs forward': spells.every(({ from, to }) => from <= to),
    'a spell costs nothing below zero': spells.every(
      ({ standAtRisk, delayDays }) => standAtRisk >= 0 && (!delayDays || (delayDays.half >= 0 && delayDays.most >= 0)),
    ),
    'a hot spell peaks above its threshold': (answer.hotSpells ?? []).every((one) => one.peakC >= one.thresholdC),
    'a cold spell peaks below its threshold': (answer.coldSpells ?? []).every((one) => one.peakC <= one.thresholdC),
  });
}

function lawsBrokenBySoil({ series }: SoilAnswer): string[] {
  if ('readings' in series) {
    const instants = series.readings.map(({ at }) => Date.parse(at));
    return brokenAmong({
      'readings are an hour apart': instants.every((ms, i) => i === 0 || ms - instants[i - 1]! === 3_600_000),
      'soil is neither ice age nor oven': series.readings.every(({ value }) => value > -100 && value < 120),
    });
  }
  const { daily } = series;
  return brokenAmong({
    'there is a day': daily.length > 0,
    'dates follow one another': daily.every(({ date }, i) => i === 0 || date === dateAfter(daily[i - 1]!.date, 1)),
    'each day has min <= mean <= max': daily.every(({ min, mean, max }) => min <= mean && mean <= max),
    'each day says how sure it is': daily.every(({ plusMinus }) => plusMinus > 0 && plusMinus < 30),
  });
}

function lawsBrokenByCheck({ min, mean, max, rows, used, droppedCount, dropped, series }: CheckAnswer): string[] {
  const ordered = (low?: number | null, middle?: number | null, high?: number | null): boolean =>
    (low ?? -Infinity) <= (middle ?? low ?? -Infinity) && (middle ?? low ?? -Infinity) <= (high ?? Infinity);
  return brokenAmong({
    'min <= mean <= max': ordered(min, mean, max),
    'each day has min <= mean <= max': series.daily.every((day) => ordered(day.min, day.mean, day.max)),
    'days rise': series.daily.every(({ date }, i) => i === 0 || series.daily[i - 1]!.date < date),
    'no more rows are used and dropped than came': used + droppedCount <= rows,
    'at most a hundred dropped values are listed': dropped.length === Math.min(100, droppedCount),
  });
}

/**
 * Asks, and tells how long the answer took, or kept this process busy, whichever is less: on a machine that is shared, other
 * programs take their part of the time. An answer that hangs is ended by the time a test may take.
 */
export async function timed({ contentType, ...sent }: Sent): Promise<{ ms: number; response: LightMyRequestResponse }> {
  const startMs = performance.now();
  const before = process.cpuUsage();
  const response = await app.inject({ ...sent, headers: contentType ? { 'content-type': contentType } : {} });
  const { user, system } = process.cpuUsage(before);
  return { ms: Math.min(performance.now() - startMs, (user + system) / 1000), response };
}
