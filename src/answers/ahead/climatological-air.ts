import { addDays, dateAt, dayOfYear, daysBetween, HOUR_MS } from '../../basics/calendar.js';
import { AIR_DAY_SHAPE } from '../../seedbed/sun/day-curve.js';
import { hourlyFromDays } from '../../seedbed/sun/hourly-from-days.js';
import { extraterrestrialMJ } from '../../seedbed/sun/sun.js';
import type { AirRecord } from '../../seedbed/surface/surface-forcing.js';
import { type Site, sunOnClock } from '../soil/known-hours.js';
import type { Clock } from '../soil/probe-at-seed.js';

/** Sunshine above the atmosphere in summer, where no latitude is known [MJ m⁻² d⁻¹]; it hardly differs from 30 to 60°. */
const SUMMER_MJ = 40;
const MEAN_C = 20;
/** Over a usual day the air swings so far [K]: common in the growing season, no source. */
export const CLIMATOLOGICAL_RANGE_K = 10;

/**
 * The same day of air again and again over a clock: to ask what a bed makes of weather that is not known.
 *
 * @param site   The place, for its sun; without a latitude it is summer, and days last twelve hours.
 * @param clock  The hours.
 * @param rangeK How far each day swings [K].
 */
export function climatologicalAir(site: Site, { startMs, nHours }: Clock, rangeK: number): AirRecord {
  const firstDate = dateAt(startMs, site.zone);
  const lastDate = dateAt(startMs + nHours * HOUR_MS - 1, site.zone);
  const days = Array.from({ length: daysBetween(firstDate, lastDate) + 1 }, (_, i) => {
    const date = addDays(firstDate, i);
    return {
      ...sunOnClock(date, site, startMs),
      minC: MEAN_C - rangeK / 2,
      maxC: MEAN_C + rangeK / 2,
      extraterrestrialMJ: site.latitude === null ? SUMMER_MJ : extraterrestrialMJ(site.latitude, dayOfYear(date)),
    };
  });
  const noted = days.map((day) => ({ ...day, meanC: null }));
  return { hourlyC: hourlyFromDays(noted, nHours, AIR_DAY_SHAPE), days };
}

/** Soil that has lain under such air for ever, the season left aside. */
export const climatologicalStart = { wave: { meanC: MEAN_C, cosineK: 0, sineK: 0 }, day: 0 };
