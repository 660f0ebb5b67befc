import { DAY_MS, dateAt, dayOfYear, startOfDay } from '../../basics/calendar.js';
import { YEAR_DAYS } from '../../basics/numerics/harmonic-fit.js';
import { extraterrestrialMJ } from '../../seedbed/sun/sun.js';
import { LEVEL_DAYS, seasonalPersistence } from '../../seedbed/surface/seasonal-persistence.js';
import type { Site } from '../soil/known-hours.js';

/** Assumptions for the time after the last value. */
export type Extrapolation = 'past-years' | 'seasonal-drift' | 'repeat-last-week' | 'refuse';

/** The swing of day and night after the last value is the mean of this many last days. */
const SWING_DAYS = 7;
const REPEATED_DAYS = 7;

/**
 * Hourly temperatures after the last value: the season drifts on, or the last week comes again.
 *
 * @param beyond Which of the two.
 * @param knownC All hours known, the last one last [°C]. Shape (n), n >= 24.
 * @param nHours How many more are wanted.
 * @param lastMs The instant at which the known hours end.
 * @param site   The place; the drift needs its latitude.
 */
export function hoursAhead(
  beyond: 'seasonal-drift' | 'repeat-last-week',
  knownC: Float64Array,
  nHours: number,
  lastMs: number,
  site: Site,
): Float64Array {
  return beyond === 'seasonal-drift' ? seasonallyPersistent(knownC, nHours, lastMs, site) : repeated(knownC, nHours);
}

function repeated(knownC: Float64Array, nHours: number): Float64Array {
  const period = 24 * Math.min(REPEATED_DAYS, Math.floor(knownC.length / 24));
  const ahead = new Float64Array(nHours);
  for (let hour = 0; hour < nHours; hour++) ahead[hour] = knownC[knownC.length - period + (hour % period)]!;
  return ahead;
}

/** Without sun, too, days swing a little: as if there were so much more of it [MJ m⁻² d⁻¹]. */
const MIN_SUN_MJ = 5;

/** The season's drift by the day, with the mean swing of the last days laid over it, wider or narrower with the sun. */
function seasonallyPersistent(knownC: Float64Array, nHours: number, lastMs: number, site: Site): Float64Array {
  const nDays = Math.min(LEVEL_DAYS, Math.floor(knownC.length / 24));
  const firstHour = knownC.length - 24 * nDays;
  const means = Float64Array.from({ length: nDays }, (_, day) => {
    const from = firstHour + 24 * day;
    return knownC.subarray(from, from + 24).reduce((sum, value) => sum + value, 0) / 24;
  });
  const swing = new Float64Array(24);
  const swingDays = Math.min(SWING_DAYS, nDays);
  for (let day = nDays - swingDays; day < nDays; day++) {
    for (let hour = 0; hour < 24; hour++) {
      swing[hour]! += (knownC[firstHour + 24 * day + hour]! - means[day]!) / swingDays;
    }
  }
  const middleOfFirstMs = lastMs + DAY_MS / 2;
  const date = dateAt(middleOfFirstMs, site.zone);
  const nextDay = dayOfYear(date) + (middleOfFirstMs - startOfDay(date, site.zone)) / DAY_MS - 0.5;
  const drift = seasonalPersistence(means, nextDay, site.latitude!, Math.ceil(nHours / 24));
  const ahead = new Float64Array(nHours);
  const height = (day: number): number => MIN_SUN_MJ + extraterrestrialMJ(site.latitude!, 1 + ((day - 1) % YEAR_DAYS));
  const lastHeight = height(nextDay);
  for (let day = 0; 24 * day < nHours; day++) {
    const wider = height(nextDay + day) / lastHeight;
    for (let hour = 24 * day; hour < Math.min(nHours, 24 * day + 24); hour++) {
      ahead[hour] = drift[day]! + wider * swing[hour % 24]!;
    }
  }
  return ahead;
}
