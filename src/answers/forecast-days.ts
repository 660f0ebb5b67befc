import type { PlainDate } from '../basics/calendar.js';
import { type Basis, bases } from '../basics/series.js';
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
    const own = sent.get(dates[day]!);
    const lowest = own?.min ?? min;
    const highest = own?.max ?? max;
    told.push({
      date: dates[day]!,
      min: lowest,
      mean: own?.mean ?? Math.min(highest, Math.max(lowest, sum / (hour - first))),
      max: highest,
      basis: bases[mostOf(hoursByBasis)]!,
      emergedPercent: (viablePercent * countUpBy(run, Math.min(countH, endH[day]! - wetH))) / COHORTS,
      hotHours,
    });
  }
  return told;
}

/** Whole days as they were sent, measured ones before forecast ones. */
function daysSent(series: readonly ReadSeries[]): Map<PlainDate, Day> {
  const sent = new Map<PlainDate, Day>();
  for (const origin of ['forecast', 'measured']) {
    for (const one of series) {
      if (one.origin !== origin) continue;
      for (const day of one.days) if (day.complete) sent.set(day.date, day);
    }
  }
  return sent;
}

function mostOf(counts: Uint16Array): number {
  let most = 0;
  for (let i = 1; i < counts.length; i++) if (counts[i]! > counts[most]!) most = i;
  return most;
}
