/** Depth of the sun's centre below the horizon at sunrise and sunset: refraction and the sun's own radius [°]. */
const HORIZON_DEG = 0.8333;

/**
 * Hours from sunrise to sunset.
 *
 * @param latitudeDeg Latitude, north positive [°], -90 to 90.
 * @param dayOfYear   1 January is 1; 1 to 366.
 * @returns Day length [h], 0 in polar night, 24 in polar day.
 *
 * Formula: θ = 0.2163108 + 2 atan(0.9671396 tan(0.00860 (J - 186))); φ = asin(0.39795 cos θ);
 * D = 24 - (24/π) acos((sin p + sin L sin φ) / (cos L cos φ)), the argument kept within -1 to 1.
 * Accuracy: within a minute of almanacs up to 40° (stated in the source).
 * Source: Forsythe, Rykiel, Stahl, Wu, Schoolfield (1995). A model comparison for daylength as a function of latitude
 * and day of year. Ecol. Model. 80: 87-95, eqns 1-3.
 * @example dayLengthH(40, 172) // => 15.016
 */
export function dayLengthH(latitudeDeg: number, dayOfYear: number): number {
  const theta = 0.2163108 + 2 * Math.atan(0.9671396 * Math.tan(0.0086 * (dayOfYear - 186)));
  const phi = Math.asin(0.39795 * Math.cos(theta));
  const latitude = (latitudeDeg * Math.PI) / 180;
  const horizon = (HORIZON_DEG * Math.PI) / 180;
  const argument = (Math.sin(horizon) + Math.sin(latitude) * Math.sin(phi)) / (Math.cos(latitude) * Math.cos(phi));
  return 24 - (24 / Math.PI) * Math.acos(Math.min(1, Math.max(-1, argument)));
}
