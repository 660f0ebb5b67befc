import type { PlainDate } from '../../basics/calendar.js';
import type { Basis } from '../../basics/series.js';
import { COHORTS, type CohortRun } from '../../germination/run/cohorts.js';
import { countUpBy } from '../../germination/run/outcome.js';
import type { ReadSeries } from '../../readings/read-series.js';
import type { PlaceDays } from '../soil/place-days.js';
import type { SeedTemperature } from './record/seed-temperature.js';
import { seedDays } from './seed-days.js';

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
interface SownSeed {
  /** The hour of the wetting, on the record's clock. */
  readonly imbibitionH: number;
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
  temperature: SeedTemperature,
  { imbibitionH, countH, hotThresholdC, run, viablePercent }: SownSeed,
): ForecastDay[] {
  const { hourlyC } = temperature;
  return seedDays(series, days, temperature).map(({ date, min, mean, max, basis, fromH, toH }) => {
    const endH = Math.min(countH, days.endH[days.dayOfHour[fromH]!]! - imbibitionH);
    let hotHours = 0;
    for (let hour = fromH < imbibitionH ? imbibitionH : fromH; hour < toH; hour++)
      if (hourlyC[hour]! > hotThresholdC) hotHours++;
    const emergedPercent = (viablePercent * countUpBy(run, endH)) / COHORTS;
    return { date, min, mean, max, basis, emergedPercent, hotHours };
  });
}
