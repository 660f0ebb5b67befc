import type { PlainDate } from '../basics/calendar.js';
import { type Basis, bases, basisCode } from '../basics/series.js';
import { COHORTS, type CohortRun } from '../germination/cohorts.js';
import { countUpBy } from '../germination/outcome.js';
import type { Day } from '../readings/days.js';
import type { ReadSeries } from '../readings/read-series.js';
import type { PlaceDays } from './place-days.js';
import type { SeedTemperature } from './seed-temperature.js';

export interface ForecastDay {
  readonly date: PlainDate;
  readonly min: number;
  readonly mean: number;
  readonly max: number;
  readonly basis: Basis;
  readonly emergedPercent: number;
  readonly hotHours: number;
}

/** The sowing a day's figures belong to. */
interface Sown {
  /** The hour of the wetting, on the record's clock. */
  readonly wetH: number;
  /** When the grower counts [h since wetting]. */
  readonly countH: number;
  readonly hotThresholdC: number;
  readonly run: CohortRun;
  readonly viablePercent: number;
}

/** Day by day from the sowing to the count: how warm it is at the seed, on what that rests, and how much is up. */
export function forecastDays(
  series: readonly ReadSeries[],
  days: PlaceDays,
  { hourlyC, basis }: SeedTemperature,
  { wetH, countH, hotThresholdC, run, viablePercent }: Sown,
): ForecastDay[] {
  const sent = daysSent(series);
  const { dates, dayOfHour, endH } = days;
  const hoursByBasis = new Uint16Array(bases.length);
  const told: ForecastDay[] = [];
  let hour = 0;
  while (hour < hourlyC.length && dayOfHour[hour]! < 0) hour++;
  for (let day = 0; day < dates.length && hour < hourlyC.length; day++) {
    const first = hour;
    let [min, max, sum, hotHours] = [Infinity, -Infinity, 0, 0];
    hoursByBasis.fill(0);
    for (; hour < hourlyC.length && dayOfHour[hour] === day; hour++) {
      const tempC = hourlyC[hour]!;
      if (tempC < min) min = tempC;
      if (tempC > max) max = tempC;
      sum += tempC;
      hoursByBasis[basis[hour]!]!++;
      if (hour >= wetH && tempC > hotThresholdC) hotHours++;
    }
    if (hour === first) continue;
    // A day as it was sent holds only where no hour of it rests on something else.
    const asSent = sent.get(dates[day]!);
    const own = asSent && hoursByBasis[asSent.basis] === hour - first ? asSent.day : undefined;
    const lowest = own?.min ?? min;
    const highest = own?.max ?? max;
    told.push({
      date: dates[day]!,
      min: lowest,
      mean: own?.mean ?? Math.min(highest, Math.max(lowest, sum / (hour - first))),
      max: highest,
      basis: bases[leastSureOf(hoursByBasis)]!,
      emergedPercent: (viablePercent * countUpBy(run, Math.min(countH, endH[day]! - wetH))) / COHORTS,
      hotHours,
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
