import { HOUR_MS, type Zone } from '../../basics/calendar.js';

/** No clock is legally so far from the sun's at any place where people live, summer time left aside [h]. */
const MAX_HOURS = 3;
const DEGREES_PER_HOUR = 15;
const DAY_HOURS = 24;
/** In one of them no summer time holds. */
const INSTANTS_MS = [Date.UTC(2026, 0, 15), Date.UTC(2026, 6, 15)];

/**
 * True where a place's clock is over three hours from the sun's, as with a forgotten minus before the longitude.
 *
 * @param zone         Of the place.
 * @param longitudeDeg East positive [°].
 * @throws ScienceError never.
 */
export function isZoneAgainstLongitude(zone: Zone, longitudeDeg: number): boolean {
  const standardMs = Math.min(...INSTANTS_MS.map((instantMs) => zone.offsetMs(instantMs)));
  const hours = standardMs / HOUR_MS - longitudeDeg / DEGREES_PER_HOUR;
  // The date line: 13 hours before is 11 hours after.
  const turned = ((hours % DAY_HOURS) + DAY_HOURS) % DAY_HOURS;
  return Math.min(turned, DAY_HOURS - turned) > MAX_HOURS;
}
