/** Mean radius of the earth [km]. */
const EARTH_KM = 6371;
const RADIANS = Math.PI / 180;

/**
 * The distance between two places along the earth's surface.
 *
 * @param latitudeA  North positive [°].
 * @param longitudeA East positive [°].
 * @param latitudeB  As the first.
 * @param longitudeB As the first.
 * @returns Distance [km].
 * @throws ScienceError never.
 *
 * Formula: haversine, on a sphere.
 * Source: Sinnott (1984). Virtues of the haversine. Sky and Telescope 68: 159.
 * @example greatCircleKm(0, 0, 0, 90) // => 10007.54
 */
export function greatCircleKm(latitudeA: number, longitudeA: number, latitudeB: number, longitudeB: number): number {
  const halfNorth = Math.sin(((latitudeB - latitudeA) * RADIANS) / 2);
  const halfEast = Math.sin(((longitudeB - longitudeA) * RADIANS) / 2);
  const haversine =
    halfNorth * halfNorth + Math.cos(latitudeA * RADIANS) * Math.cos(latitudeB * RADIANS) * halfEast * halfEast;
  return 2 * EARTH_KM * Math.asin(Math.sqrt(Math.min(1, haversine)));
}
