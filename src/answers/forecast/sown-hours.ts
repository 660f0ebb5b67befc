import type { PlainDate, Zone } from '../../basics/calendar.js';
import { type HourlyProgress, unknownProgress } from '../../germination/run/cohorts.js';
import type { Extrapolation } from '../ahead/hours-ahead.js';
import { type PlaceDays, placeDays } from '../soil/place-days.js';
import type { CountPeriod } from './count-period.js';
import type { SeedRecord, SeedTemperature } from './record/seed-temperature.js';

/** The temperatures of a sowing: from the record's start on, and from wetting to the count. */
export interface SownHours {
  readonly temperature: SeedTemperature;
  /** The place's days from the sowing's own to the day after the count. */
  readonly days: PlaceDays;
  /** Hourly means since wetting, up to a day beyond the count where they are known [°C]. */
  readonly hourlyC: Float64Array;
  /** Which day at the place each of these hours falls on. */
  readonly dayOfHour: Int32Array;
  /** Those before the count [°C], and the standard deviation of each for want of knowing the soil [K]. */
  readonly countedC: Float64Array;
  readonly sdK: Float64Array;
  /** Progress in the counted hours, worked out once for all runs through them. */
  readonly progress: HourlyProgress;
}

/** The temperatures of a sowing, a day beyond its count where they reach so far. */
export function sownHours(
  record: SeedRecord,
  beyond: Extrapolation,
  sownOn: PlainDate,
  { countH, countDays }: CountPeriod,
  zone: Zone,
): SownHours {
  const knownH = record.knownToH - record.imbibitionH;
  const endH = beyond === 'refuse' ? Math.max(countH, Math.min(countH + 24, knownH)) : countH + 24;
  const temperature = record.upTo(Math.max(0, Math.ceil(endH)));
  const days = placeDays(temperature.startMs, temperature.hourlyC.length, sownOn, countDays + 1, zone);
  const hourlyC = temperature.hourlyC.subarray(record.imbibitionH);
  const countedC = hourlyC.subarray(0, Math.max(0, Math.ceil(countH)));
  return {
    temperature,
    days,
    hourlyC,
    dayOfHour: days.dayOfHour.subarray(record.imbibitionH),
    countedC,
    sdK: temperature.sdK.subarray(record.imbibitionH, record.imbibitionH + countedC.length),
    progress: unknownProgress(countedC.length),
  };
}
