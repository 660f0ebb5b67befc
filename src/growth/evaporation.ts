import { extraterrestrialMJ } from '../seedbed/sun/sun.js';

/** Sunshine that evaporates a millimetre of water [MJ m⁻² mm⁻¹]: the latent heat at 20 °C. */
const MJ_A_MM = 2.45;

/**
 * Potential evaporation of a day, from the air's extremes alone.
 *
 * @param minC        Minimum of the air [°C].
 * @param maxC        Maximum of the air [°C], not below the minimum.
 * @param latitudeDeg North positive [°].
 * @param dayOfYear   1 January is 1.
 * @returns Potential evaporation [mm/d], 0 or more.
 *
 * Formula: 0.0023 Ra sqrt(max - min) (T + 17.8), Ra as millimetres of water
 * Source: Hargreaves & Samani (1985), Applied Engineering in Agriculture 1: 96-99.
 * @example evaporationMm(2, 12, 44.42, 60) // => 1.568
 */
export function evaporationMm(minC: number, maxC: number, latitudeDeg: number, dayOfYear: number): number {
  const sunMm = extraterrestrialMJ(latitudeDeg, dayOfYear) / MJ_A_MM;
  return Math.max(0, 0.0023 * sunMm * Math.sqrt(Math.max(0, maxC - minC)) * ((minC + maxC) / 2 + 17.8));
}
