import { z } from 'zod';
import { addDays, dateAt, findStamp, HOUR_MS, type PlainDate, startOfDay, type Zone } from '../basics/calendar.js';
import { basisCode } from '../basics/series.js';
import { celsiusFrom, type TemperatureUnit } from '../basics/units.js';
import { sourceFact } from '../garden/store/connection-facts.js';
import { daysOf } from '../readings/daily/days.js';
import { isTemperature } from '../readings/read-series.js';
import { type RawReading, rowsInTimeOrder } from '../readings/readings.js';
import { airDayOf } from './air-day.js';
import type { Interval } from './iso-interval.js';
import { jsonAnswer } from './json-answer.js';
import type { AnswerContext, SourceDays } from './source-days.js';
import { SourceError } from './source-error.js';
import { unitNamed } from './unit-name.js';

const period = z
  .object({
    details: z
      .object({ air_temperature_max: z.number().optional(), air_temperature_min: z.number().optional() })
      .optional(),
  })
  .optional();
const timeseries = z.object({
  properties: z.object({
    meta: z.object({ units: z.object({ air_temperature: z.string().optional() }) }),
    timeseries: z.array(
      z.object({
        time: z.string(),
        data: z.object({
          instant: z.object({ details: z.object({ air_temperature: z.number().optional() }).optional() }),
          next_6_hours: period,
        }),
      }),
    ),
  }),
});

/** Later hours of a forecast come six hours apart; a wider step leaves a hole [ms]. */
const LONGEST_STEP_MS = 6 * HOUR_MS;

/**
 * A forecast for a point as GeoJSON: instants with the air temperature of each, hourly at first and six hours apart
 * later, and the extremes of the six hours that follow some of them.
 *
 * The form is that of MET Norway's Locationforecast 2.0 (docs.api.met.no/doc/ForecastJSON.html, read 2026-11-30). A date
 * counts when instants cover it from its first hour to its last. Where they are more than an hour apart, the extremes of
 * the six hours widen the date in which their middle lies, as the hottest and coldest hours lie between the instants.
 */
export function readTimeseriesGeojson(bytes: Uint8Array, { zone }: AnswerContext): SourceDays {
  const { properties } = jsonAnswer(bytes, timeseries, 'timeseries');
  const name = properties.meta.units.air_temperature ?? '';
  const unit = unitNamed(name);
  if (!unit)
    throw new SourceError(sourceFact('source.unit', { value: 'air_temperature', unit: name.slice(0, 40) || null }));
  const instants = properties.timeseries.map(({ time, data }) => {
    const atMs = findStamp(time)?.ms;
    if (atMs === undefined) {
      throw new SourceError(sourceFact('source.no-time', { value: 'air_temperature', text: time.slice(0, 60) }));
    }
    return { atMs, data };
  });
  const { readings } = rowsInTimeOrder(instants.flatMap((one) => readingOf(one, unit)));
  const runs = runsOf(readings.atMs);
  const isWhole = (date: PlainDate): boolean => {
    const [start, end] = [startOfDay(date, zone), startOfDay(addDays(date, 1), zone)];
    return runs.some(({ fromMs, toMs }) => fromMs <= start && toMs >= end);
  };
  const wider = extremesByDate(instants, unit, zone);
  const { days } = daysOf(readings, zone, LONGEST_STEP_MS);
  const forecast = days.flatMap(({ date, min, mean, max }) => {
    if (!isWhole(date)) return [];
    const extremes = [min!, max!, ...(wider.get(date) ?? [])];
    return airDayOf(date, { min: Math.min(...extremes), mean, max: Math.max(...extremes) }) ?? [];
  });
  return { measured: [], forecast };
}

type Instant = { readonly atMs: number } & Pick<z.infer<typeof timeseries>['properties']['timeseries'][number], 'data'>;

function readingOf({ atMs, data }: Instant, unit: TemperatureUnit): RawReading[] {
  const value = data.instant.details?.air_temperature;
  const valueC = value === undefined ? Number.NaN : celsiusFrom[unit](value);
  return isTemperature(valueC) ? [{ atMs, valueC, basis: basisCode('forecast') }] : [];
}

/** Stretches of time without a hole, between instants in order. */
function runsOf(atMs: Float64Array): Interval[] {
  const runs: { fromMs: number; toMs: number }[] = [];
  for (const ms of atMs) {
    const last = runs.at(-1);
    if (last && ms - last.toMs <= LONGEST_STEP_MS) last.toMs = ms;
    else runs.push({ fromMs: ms, toMs: ms });
  }
  return runs;
}

/** The extremes of six hours that no hourly instants follow [°C], by the date in which their middle lies. */
function extremesByDate(instants: readonly Instant[], unit: TemperatureUnit, zone: Zone): Map<PlainDate, number[]> {
  const sorted = [...instants].sort((a, b) => a.atMs - b.atMs);
  const byDate = new Map<PlainDate, number[]>();
  for (const [i, { atMs, data }] of sorted.entries()) {
    const next = sorted[i + 1];
    if (next && next.atMs - atMs <= HOUR_MS) continue;
    const { air_temperature_min: low, air_temperature_max: high } = data.next_6_hours?.details ?? {};
    const date = dateAt(atMs + 3 * HOUR_MS, zone);
    const found = [low, high].flatMap((value) => (value === undefined ? [] : [celsiusFrom[unit](value)]));
    byDate.set(date, [...(byDate.get(date) ?? []), ...found.filter(isTemperature)]);
  }
  return byDate;
}
