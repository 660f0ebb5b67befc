import type { PlainDate } from '../../basics/calendar.js';
import { type Basis, bases, basisCode } from '../../basics/series.js';
import type { Day } from '../../readings/daily/days.js';
import type { ReadSeries } from '../../readings/read-series.js';
import type { PlaceDays } from '../soil/place-days.js';
import type { SeedTemperature } from './record/seed-temperature.js';

/** A date's temperatures at the seed, and the hours that they are of. */
export interface SeedDay {
  readonly date: PlainDate;
  readonly min: number;
  readonly mean: number;
  readonly max: number;
  readonly basis: Basis;
  /** The date's hours on the record's clock: from the first up to, not including, the end. */
  readonly fromH: number;
  readonly toH: number;
}

/**
 * Hourly temperatures by the place's dates.
 *
 * @param series Series of the seed's own depth: their days stand as they were sent, where no hour rests on anything else.
 * @param days   The dates.
 * @param seed   The hours.
 */
export function seedDays(
  series: readonly ReadSeries[],
  { dates, dayOfHour }: PlaceDays,
  { hourlyC, basis }: Pick<SeedTemperature, 'hourlyC' | 'basis'>,
): SeedDay[] {
  const sent = daysSent(series);
  const hoursByBasis = new Uint16Array(bases.length);
  const told: SeedDay[] = [];
  let hour = 0;
  while (hour < hourlyC.length && dayOfHour[hour]! < 0) hour++;
  for (let day = 0; day < dates.length && hour < hourlyC.length; day++) {
    const first = hour;
    let [min, max, sum] = [Infinity, -Infinity, 0];
    hoursByBasis.fill(0);
    for (; hour < hourlyC.length && dayOfHour[hour] === day; hour++) {
      const tempC = hourlyC[hour]!;
      if (tempC < min) min = tempC;
      if (tempC > max) max = tempC;
      sum += tempC;
      hoursByBasis[basis[hour]!]!++;
    }
    if (hour === first) continue;
    const asSent = sent.get(dates[day]!);
    // A day sent as a mean alone stands where its hours are that mean; with a modelled swing it has become another.
    const stands = asSent && hoursByBasis[asSent.basis] === hour - first && (asSent.day.min !== null || min === max);
    const own = stands ? asSent.day : undefined;
    const lowest = own?.min ?? min;
    const highest = own?.max ?? max;
    told.push({
      date: dates[day]!,
      min: lowest,
      mean: own?.mean ?? Math.min(highest, Math.max(lowest, sum / (hour - first))),
      max: highest,
      basis: bases[leastSureOf(hoursByBasis)]!,
      fromH: first,
      toH: hour,
    });
  }
  return told;
}

/** Whole days as they were sent, measured ones before forecast ones, and what they rest on. */
function daysSent(series: readonly ReadSeries[]): Map<PlainDate, { day: Day; basis: number }> {
  const sent = new Map<PlainDate, { day: Day; basis: number }>();
  for (const origin of ['forecast', 'measured'] as const) {
    for (const one of series) {
      if (one.origin !== origin) continue;
      one.days.forEach((day, i) => {
        if (day.complete) sent.set(day.date, { day, basis: one.dayBasis[i] ?? basisCode(origin) });
      });
    }
  }
  return sent;
}

/** A day rests on the least sure of what a few of its hours rest on. */
const FEW_HOURS = 3;
function leastSureOf(hoursByBasis: Uint16Array): number {
  for (let basis = bases.length - 1; basis > 0; basis--) if (hoursByBasis[basis]! >= FEW_HOURS) return basis;
  return hoursByBasis.indexOf(Math.max(...hoursByBasis));
}
