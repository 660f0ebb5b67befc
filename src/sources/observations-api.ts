import { z } from 'zod';
import { findStamp } from '../basics/calendar.js';
import { basisCode } from '../basics/series.js';
import { celsiusFrom, type TemperatureUnit } from '../basics/units.js';
import { sourceFact } from '../garden/store/connection-facts.js';
import { daysOf } from '../readings/daily/days.js';
import { isTemperature } from '../readings/read-series.js';
import { type RawReading, rowsInTimeOrder } from '../readings/readings.js';
import { longestJoinedMs, usualStepMs } from '../readings/time/step.js';
import { airDayOf } from './air-day.js';
import { intervalOf } from './iso-interval.js';
import { jsonAnswer } from './json-answer.js';
import type { AnswerContext, SourceDays } from './source-days.js';
import { SourceError } from './source-error.js';
import { unitNamed } from './unit-name.js';

const MAX_PAGES = 200;
/** Longest averaging interval accepted [ms]; a longer mean says nothing about the hour. */
const MAX_MEAN_MS = 3 * 3_600_000;

const datastream = z.object({
  '@iot.id': z.union([z.string(), z.number()]).optional(),
  unitOfMeasurement: z.object({
    name: z.string().nullish(),
    symbol: z.string().nullish(),
    definition: z.string().nullish(),
  }),
});
const observation = z.object({
  phenomenonTime: z.string(),
  result: z.unknown(),
  Datastream: datastream.optional(),
});
const page = z.object({ value: z.array(observation), '@iot.nextLink': z.string().optional() });

type Datastream = z.infer<typeof datastream>;
type Observation = z.infer<typeof observation>;

/**
 * Observations of one Datastream (OGC 18-088, SensorThings API 1.1), page after page: `phenomenonTime` is an instant or
 * a short interval, whose middle counts. The unit stands in the Datastream, which the answer includes if the address
 * has `$expand=Datastream`, and which is requested otherwise. Days without full coverage are left out.
 */
export async function readObservationsApi(bytes: Uint8Array, context: AnswerContext): Promise<SourceDays> {
  const observations = await allPages(bytes, context);
  if (observations.length === 0) throw new SourceError(sourceFact('source.no-observations'));
  const stream = streamOf(observations) ?? (await askStream(context));
  const unit = unitOf(stream);
  const raw = observations.flatMap((one) => readingOf(one, unit) ?? []);
  const { readings } = rowsInTimeOrder(raw);
  const { days } = daysOf(readings, context.zone, longestJoinedMs(usualStepMs(readings.atMs)));
  return { measured: days.flatMap((day) => (day.complete ? (airDayOf(day.date, day) ?? []) : [])), forecast: [] };
}

const readPage = (bytes: Uint8Array) => jsonAnswer(bytes, page, 'observations');

async function allPages(first: Uint8Array, { url, ask }: AnswerContext): Promise<Observation[]> {
  const observations: Observation[] = [];
  const seen = new Set([url.href]);
  for (let bytes = first, from = url; ; ) {
    const { value, '@iot.nextLink': link } = readPage(bytes);
    observations.push(...value);
    if (link === undefined) return observations;
    const next = URL.canParse(link, from.href) ? new URL(link, from) : null;
    if (next?.origin !== url.origin) throw new SourceError(sourceFact('source.other-host'));
    if (seen.has(next.href)) throw new SourceError(sourceFact('source.circle'));
    if (seen.size === MAX_PAGES) {
      throw new SourceError(sourceFact('source.pages', { maxPages: MAX_PAGES }));
    }
    seen.add(next.href);
    bytes = await ask(next);
    from = next;
  }
}

function streamOf(observations: readonly Observation[]): Datastream | undefined {
  const [first] = observations.flatMap((one) => one.Datastream ?? []);
  const isMixed = observations.some((one) => one.Datastream && one.Datastream['@iot.id'] !== first?.['@iot.id']);
  if (isMixed) throw new SourceError(sourceFact('source.mixed'));
  return first;
}

async function askStream({ url, ask }: AnswerContext): Promise<Datastream> {
  const [path] = /^.*\/Datastreams\([^()/]+\)(?=\/Observations\/?$)/.exec(url.pathname) ?? [];
  if (!path) {
    throw new SourceError(sourceFact('source.unit-untold'));
  }
  const bytes = await ask(new URL(path, url));
  return jsonAnswer(bytes, datastream, 'datastream');
}

/** The definition is most reliable, then the symbol, then the name. */
function unitOf({ unitOfMeasurement: { definition, symbol, name } }: Datastream): TemperatureUnit {
  const unit = [definition, symbol, name].flatMap((one) => (one ? (unitNamed(one) ?? []) : []))[0];
  if (unit) return unit;
  const text = symbol ?? name ?? definition ?? '';
  throw new SourceError(sourceFact('source.unit', { value: null, unit: text.slice(0, 40) || null }));
}

function readingOf({ phenomenonTime, result }: Observation, unit: TemperatureUnit): RawReading | undefined {
  const atMs = findStamp(phenomenonTime)?.ms ?? middleOf(phenomenonTime);
  const value = typeof result === 'string' && result.trim() !== '' ? Number(result) : result;
  if (atMs === undefined || typeof value !== 'number' || !Number.isFinite(value)) return undefined;
  const valueC = celsiusFrom[unit](value);
  return isTemperature(valueC) ? { atMs, valueC, basis: basisCode('measured') } : undefined;
}

function middleOf(text: string): number | undefined {
  const interval = intervalOf(text);
  if (!interval || interval.toMs - interval.fromMs > MAX_MEAN_MS) return undefined;
  return (interval.fromMs + interval.toMs) / 2;
}
