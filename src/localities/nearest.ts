import type { LocalityIndex } from './locality-index.js';
import { type NamedLocality, namedLocality } from './near.js';

export interface NearestLocality extends NamedLocality {
  /** Distance along the great circle. */
  readonly km: number;
}

const KM_PER_DEGREE = 111.195;
const RADIUS_KM = 6371;
const RADIANS = Math.PI / 180;

/** The localities nearest to a point, the nearest first. Degrees, north and east positive. */
export function nearest(
  index: LocalityIndex,
  latitude: number,
  longitude: number,
  limit: number,
  country?: string,
): NearestLocality[] {
  const best: { readonly place: number; readonly km: number }[] = [];
  let farthestKm = Number.POSITIVE_INFINITY;
  for (let place = 0; place < index.places; place++) {
    const toNorthKm = Math.abs(index.latitude[place]! / 100 - latitude) * KM_PER_DEGREE;
    if (toNorthKm > farthestKm) continue;
    const km = greatCircleKm(latitude, longitude, index.latitude[place]! / 100, index.longitude[place]! / 100);
    if (km >= farthestKm) continue;
    if (country !== undefined && index.regions[index.region[place]!]!.country !== country) continue;
    const at = best.findIndex((one) => one.km > km);
    best.splice(at < 0 ? best.length : at, 0, { place, km });
    if (best.length > limit) best.pop();
    if (best.length === limit) farthestKm = best.at(-1)!.km;
  }
  return best.map(({ place, km }) => ({ ...namedLocality(index, place), km }));
}

/** Haversine formula on a sphere. */
function greatCircleKm(latitude1: number, longitude1: number, latitude2: number, longitude2: number): number {
  const north = Math.sin(((latitude2 - latitude1) * RADIANS) / 2);
  const east = Math.sin(((longitude2 - longitude1) * RADIANS) / 2);
  const h = north * north + Math.cos(latitude1 * RADIANS) * Math.cos(latitude2 * RADIANS) * east * east;
  return 2 * RADIUS_KM * Math.asin(Math.min(1, Math.sqrt(h)));
}
