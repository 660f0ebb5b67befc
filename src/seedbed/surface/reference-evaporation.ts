/** Water that radiation evaporates [mm per MJ m⁻²]. */
const MM_PER_MJ = 0.408;
/** Minimum of a day's evaporation [mm], because frost would make it negative. */
const MIN_MM = 0.05;

/**
 * Daily reference evaporation of watered grass, from the air's minimum and maximum.
 *
 * @param minC             The day's minimum [°C].
 * @param maxC             The day's maximum [°C].
 * @param extraterrestrial Radiation above the atmosphere [MJ m⁻² d⁻¹].
 * @returns ET0 [mm d⁻¹], at least 0.05.
 *
 * Formula: ET0 = 0.0023 · 0.408 Ra (Tm + 17.8) sqrt(d), Tm the middle of the extremes, d their distance, at least 0.5 K
 * Source: Hargreaves, Samani (1985), as FAO-56 eqn 52 gives it.
 * @example referenceEvaporationMm(12, 26, 41.9105) // => 5.4153
 */
export function referenceEvaporationMm(minC: number, maxC: number, extraterrestrial: number): number {
  const rangeK = Math.max(0.5, maxC - minC);
  return Math.max(MIN_MM, 0.0023 * MM_PER_MJ * extraterrestrial * ((minC + maxC) / 2 + 17.8) * Math.sqrt(rangeK));
}

/**
 * Saturation vapour pressure over water.
 *
 * @param tempC Temperature [°C].
 * @returns Saturation vapour pressure [kPa].
 *
 * Formula: es = 0.6108 exp(17.27 T / (T + 237.3))
 * Source: Tetens, as FAO-56 eqn 11 gives it.
 * @example saturationKPa(20) // => 2.3383
 */
export const saturationKPa = (tempC: number): number => 0.6108 * Math.exp((17.27 * tempC) / (tempC + 237.3));
