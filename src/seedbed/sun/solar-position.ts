const RAD = Math.PI / 180;
/** The sun's centre this far from the zenith is sunrise and sunset: refraction and the sun's own radius [°]. */
const SUNRISE_ZENITH_DEG = 90.833;

/**
 * How far north of the equator the sun stands at its zenith.
 *
 * @param dayOfYear 1 January is 1; 1 to 366.
 * @param hourUtc   Hour of the day [h].
 * @returns Declination, north positive [°].
 * @throws ScienceError never.
 *
 * Formula: a Fourier series of three waves in γ = 2π/365 (J - 1 + (hour - 12)/24).
 * Accuracy: as the series allows, some hundredths of a degree; leap years, counted as others, up to 0.1°.
 * Source: NOAA Global Monitoring Laboratory. General Solar Position Calculations, after Spencer (1971).
 * @example declinationDeg(172) // => 23.452
 */
export function declinationDeg(dayOfYear: number, hourUtc = 12): number {
  const g = yearAngle(dayOfYear, hourUtc);
  const series =
    0.006918 -
    0.399912 * Math.cos(g) +
    0.070257 * Math.sin(g) -
    0.006758 * Math.cos(2 * g) +
    0.000907 * Math.sin(2 * g) -
    0.002697 * Math.cos(3 * g) +
    0.00148 * Math.sin(3 * g);
  return series / RAD;
}

/**
 * How far a sundial is ahead of a clock that keeps mean solar time.
 *
 * @param dayOfYear 1 January is 1; 1 to 366.
 * @param hourUtc   Hour of the day [h].
 * @returns The equation of time [min], -14.3 to 16.5.
 * @throws ScienceError never.
 *
 * Formula: a Fourier series of two waves in γ, as `declinationDeg`.
 * Source: as `declinationDeg`.
 * @example equationOfTimeMin(172) // => -1.328
 */
export function equationOfTimeMin(dayOfYear: number, hourUtc = 12): number {
  const g = yearAngle(dayOfYear, hourUtc);
  const series =
    0.000075 +
    0.001868 * Math.cos(g) -
    0.032077 * Math.sin(g) -
    0.014615 * Math.cos(2 * g) -
    0.040849 * Math.sin(2 * g);
  return 229.18 * series;
}

/**
 * When the sun rises.
 *
 * @param latitudeDeg  Latitude, north positive [°], -90 to 90.
 * @param longitudeDeg Longitude, east positive [°], -180 to 180.
 * @param dayOfYear    1 January is 1; 1 to 366. The date at the place.
 * @returns Minutes after 00 UTC of that date; east of Greenwich it may be below 0, west of it above 1440. In polar night
 * noon, in polar day the midnight before it.
 * @throws ScienceError never.
 *
 * Formula: 720 - 4 (longitude + ha) - eqtime; cos ha = cos 90.833°/(cos φ cos δ) - tan φ tan δ, kept within -1 to 1.
 * Source: as `declinationDeg`.
 * @example sunriseMinUtc(40, -105, 100) // => 751.3
 */
export function sunriseMinUtc(latitudeDeg: number, longitudeDeg: number, dayOfYear: number): number {
  const latitude = latitudeDeg * RAD;
  const declination = declinationDeg(dayOfYear) * RAD;
  const cosine =
    Math.cos(SUNRISE_ZENITH_DEG * RAD) / (Math.cos(latitude) * Math.cos(declination)) -
    Math.tan(latitude) * Math.tan(declination);
  const hourAngleDeg = Math.acos(Math.min(1, Math.max(-1, cosine))) / RAD;
  return 720 - 4 * (longitudeDeg + hourAngleDeg) - equationOfTimeMin(dayOfYear);
}

const yearAngle = (dayOfYear: number, hourUtc: number): number =>
  ((2 * Math.PI) / 365) * (dayOfYear - 1 + (hourUtc - 12) / 24);
