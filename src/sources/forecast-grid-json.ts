import { z } from 'zod';
import { addDays, dateAt, type PlainDate, startOfDay, type Zone } from '../basics/calendar.js';
import { celsiusFrom } from '../basics/units.js';
import { sourceFact } from '../garden/store/connection-facts.js';
import { isTemperature } from '../readings/read-series.js';
import { airDayOf } from './air-day.js';
import { type Interval, intervalOf } from './iso-interval.js';
import { jsonAnswer } from './json-answer.js';
import type { AnswerContext, SourceDays } from './source-days.js';
import { SourceError } from './source-error.js';
import { unitNamed } from './unit-name.js';

const layer = z
  .object({
    uom: z.string().optional(),
    values: z.array(z.object({ validTime: z.string(), value: z.number().nullable() })),
  })
  .optional();
const layers = z.object({ temperature: layer, maxTemperature: layer, minTemperature: layer });

/** A temperature that is valid over an interval [°C]. */
interface Stretch extends Interval {
  readonly valueC: number;
}

/** Longest forecast [days]. */
const MAX_DAYS = 60;

/**
 * A national forecast of one grid cell as JSON: layers of values, each with its ISO 8601 interval (U.S. National
 * Weather Service, raw gridpoint forecast).
 *
 * A date counts when `temperature` covers it from its first hour to its last at the place. Its minimum and maximum are
 * the lowest and highest of these hours; `minTemperature` of the night and `maxTemperature` of the day extend them if
 * the middle of their interval lies in the date. Without hours, the two of one date are used instead.
 */
export function readForecastGridJson(bytes: Uint8Array, { zone }: AnswerContext): SourceDays {
  const outer = jsonAnswer(bytes, z.union([z.object({ properties: layers }), layers]), 'grid');
  const { temperature, maxTemperature, minTemperature } = 'properties' in outer ? outer.properties : outer;
  if (!temperature && !maxTemperature && !minTemperature)
    throw new SourceError(sourceFact('source.not-form', { form: 'grid', at: null }));

  const hours = hoursByDate(stretchesOf(temperature, 'temperature'), zone);
  const highs = byMiddle(stretchesOf(maxTemperature, 'maxTemperature'), zone);
  const lows = byMiddle(stretchesOf(minTemperature, 'minTemperature'), zone);
  const hasHours = (temperature?.values.length ?? 0) > 0;
  const dates = hasHours ? [...hours.keys()] : [...highs.keys()];
  const forecast = dates.sort().flatMap((date) => {
    const day = hours.get(date);
    const [night, noon] = [lows.get(date), highs.get(date)];
    if (!hasHours) return airDayOf(date, { min: lowest(night), max: highest(noon) }) ?? [];
    const values = {
      min: lowest([...(night ?? []), day!.min]),
      mean: day!.mean,
      max: highest([...(noon ?? []), day!.max]),
    };
    return airDayOf(date, values) ?? [];
  });
  return { measured: [], forecast };
}

const lowest = (values: readonly number[] = []): number | null => (values.length > 0 ? Math.min(...values) : null);
const highest = (values: readonly number[] = []): number | null => (values.length > 0 ? Math.max(...values) : null);

function stretchesOf(series: z.infer<typeof layer>, name: string): Stretch[] {
  if (!series || series.values.length === 0) return [];
  const unit = unitNamed(series.uom ?? '');
  if (!unit) {
    throw new SourceError(sourceFact('source.unit', { value: name, unit: series.uom || null }));
  }
  const stretches = series.values.flatMap(({ validTime, value }) => {
    const interval = intervalOf(validTime);
    if (!interval) throw new SourceError(sourceFact('source.no-time', { value: name, text: validTime.slice(0, 60) }));
    const valueC = value === null ? Number.NaN : celsiusFrom[unit](value);
    return isTemperature(valueC) ? [{ ...interval, valueC }] : [];
  });
  return stretches.sort((a, b) => a.fromMs - b.fromMs);
}

/** Extremes and time mean of each date that intervals cover from its start to its end. */
function hoursByDate(
  stretches: readonly Stretch[],
  zone: Zone,
): Map<PlainDate, { min: number; mean: number; max: number }> {
  const days = new Map<PlainDate, { min: number; mean: number; max: number }>();
  if (stretches.length === 0) return days;
  const first = dateAt(stretches[0]!.fromMs, zone);
  for (let n = 0, date = first; n < MAX_DAYS; n++, date = addDays(date, 1)) {
    const [start, end] = [startOfDay(date, zone), startOfDay(addDays(date, 1), zone)];
    const within = stretches.filter(({ fromMs, toMs }) => fromMs < end && toMs > start);
    let reached = start;
    let sum = 0;
    for (const { fromMs, toMs, valueC } of within) {
      if (fromMs > reached) break;
      const until = Math.min(end, toMs);
      sum += valueC * Math.max(0, until - reached);
      reached = Math.max(reached, until);
    }
    if (reached < end) continue;
    const values = within.map(({ valueC }) => valueC);
    const [min, max] = [Math.min(...values), Math.max(...values)];
    // Rounding must not move the mean beyond the extremes.
    days.set(date, { min, mean: Math.min(max, Math.max(min, sum / (end - start))), max });
  }
  return days;
}

/** Values by the date at the place of the middle of their interval. */
function byMiddle(stretches: readonly Stretch[], zone: Zone): Map<PlainDate, number[]> {
  const dates = new Map<PlainDate, number[]>();
  for (const { fromMs, toMs, valueC } of stretches) {
    const date = dateAt((fromMs + toMs) / 2, zone);
    dates.set(date, [...(dates.get(date) ?? []), valueC]);
  }
  return dates;
}
