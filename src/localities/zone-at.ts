import { regionAt } from './locality.js';
import type { LocalityIndex } from './locality-index.js';
import { nearestPlaces } from './nearest.js';

/**
 * A town so near tells the zone better than a map of zones does. Of 4,913 towns that have another within this distance,
 * that one has other offsets from UTC in 10, the map in 19; beyond it the map errs less. [km]
 */
const MAX_TOWN_KM = 10;

/**
 * The IANA time zone of a point: that of the nearest town, or by the map where none is near.
 *
 * @param ofMap The zone by a simplified map of the world's zones.
 */
export function zoneAt(
  index: LocalityIndex,
  latitude: number,
  longitude: number,
  ofMap: (latitude: number, longitude: number) => string,
): string {
  const [town] = nearestPlaces(index, latitude, longitude, 1);
  return town && town.km <= MAX_TOWN_KM ? regionAt(index, town.place).timeZone : ofMap(latitude, longitude);
}
