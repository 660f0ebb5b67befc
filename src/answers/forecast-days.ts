import type { PlainDate } from '../basics/calendar.js';
import { type Basis, bases } from '../basics/series.js';
import type { CohortRun } from '../germination/cohorts.js';
import { countUpBy } from '../germination/outcome.js';
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
  readonly hotThresholdC: number;
  readonly run: CohortRun;
  readonly viablePercent: number;
}

/** Day by day from the sowing to the count: how warm it is at the seed, on what that rests, and how much is up. */
export function forecastDays(
  series: readonly ReadSeries[],
  days: PlaceDays,
  { hourlyC, basis }: SeedTemperature,
  { wetH, hotThresholdC, run, viablePercent }: Sown,
): ForecastDay[] {
  const tallies = days.dates.map(() => ({
    min: Infinity,
    max: -Infinity,
    sum: 0,
    hours: 0,
    hot: 0,
    byBasis: new Uint16Array(bases.length),
  }));
  hourlyC.forEach((tempC, hour) => {
    const tally = tallies[days.dayOfHour[hour]!];
    if (!tally) return;
    tally.min = Math.min(tally.min, tempC);
    tally.max = Math.max(tally.max, tempC);
    tally.sum += tempC;
    tally.hours++;
    tally.byBasis[basis[hour]!]!++;
    if (hour >= wetH && tempC > hotThresholdC) tally.hot++;
  });
  const sent = new Map(
    [...series]
      .sort((a, b) => Number(b.origin === 'forecast') - Number(a.origin === 'forecast'))
      .flatMap((one) => one.days.filter((day) => day.complete).map((day) => [day.date, day] as const)),
  );
  return tallies.flatMap((tally, day): ForecastDay[] => {
    if (tally.hours === 0) return [];
    const date = days.dates[day]!;
    const own = sent.get(date);
    const mean = tally.sum / tally.hours;
    return [
      {
        date,
        min: own?.min ?? tally.min,
        mean: own?.mean ?? mean,
        max: own?.max ?? tally.max,
        basis: bases[tally.byBasis.indexOf(Math.max(...tally.byBasis))]!,
        emergedPercent: (viablePercent * countUpBy(run, days.endH[day]! - wetH)) / 100,
        hotHours: tally.hot,
      },
    ];
  });
}
