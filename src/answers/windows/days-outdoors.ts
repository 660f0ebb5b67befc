import { HOUR_MS, startOfDay, type Zone } from '../../basics/calendar.js';
import type { FrostClass } from '../../germination/crop.js';
import type { DaysOutdoors } from '../../growth/planting-out.js';
import type { PastSoil } from '../ahead/past-soil.js';
import { FROST_BELOW_USUAL_K } from './years-of-dates.js';

/** A day's mean of the soil is told of so many of its hours or more: 18 of 24, as for climate stations. */
const MIN_HOURS = 18;

/**
 * The days of a place's past years as planting out goes by them: the extremes of its air, and the mean of a bed's soil.
 *
 * @param past The bed's past soil, about as deep as roots of young plants.
 * @param zone Of the place.
 * @returns null where no air is known.
 */
export function daysOutdoors({ air, hourlyC, startMs }: PastSoil, zone: Zone): DaysOutdoors | null {
  if (!air) return null;
  const { firstDate, minC, maxC } = air;
  const firstH = Math.round((startOfDay(firstDate, zone) - startMs) / HOUR_MS);
  const soilC = Float64Array.from({ length: minC.length }, (_, day) => meanOfDay(hourlyC, firstH + 24 * day));
  return { firstDate, minC, maxC, soilC };
}

function meanOfDay(hourlyC: Float64Array, fromH: number): number {
  let [sum, known] = [0, 0];
  for (let hour = Math.max(0, fromH); hour < Math.min(hourlyC.length, fromH + 24); hour++) {
    if (Number.isNaN(hourlyC[hour]!)) continue;
    sum += hourlyC[hour]!;
    known++;
  }
  return known < MIN_HOURS ? NaN : sum / known;
}

/**
 * The same of a usual year, for crops that bear frost: nights as cold as they are in one year of five. Of tender crops a usual year
 * says nothing, as none of its nights is a late frost: null.
 */
export function usualDaysOutdoors(usual: PastSoil, zone: Zone, frost: FrostClass | null): DaysOutdoors | null {
  const days = frost === 'hardy' || frost === 'half-hardy' ? daysOutdoors(usual, zone) : null;
  return days && { ...days, minC: Float64Array.from(days.minC, (minC) => minC - FROST_BELOW_USUAL_K) };
}
