import { kangFactor } from './kang-factor.js';

/** The ground under the air: how deep, of what, and what grows and lies on it. */
export interface KangGround {
  readonly depthCm: number;
  readonly diffusivityM2s: number;
  /** Leaf area above it [m²/m²]. */
  readonly leafArea: number;
  /** Litter on it, as leaf area [m²/m²]. */
  readonly litterArea: number;
}

/**
 * Today's mean soil temperature from yesterday's and today's air, by Kang and others: leaves hold up the warming only.
 *
 * @param soilC  Yesterday's mean in the soil [°C].
 * @param airC   Today's mean of the air [°C].
 * @param ground Depth [cm], diffusivity [m²/s], leaf and litter area [m²/m²].
 * @returns Today's mean in the soil [°C].
 * @throws never.
 *
 * Formula: T' = T + (A - T) f; f as `kangFactor`, of leaves and litter where A > T, of litter alone otherwise.
 * Source: as `kangFactor`.
 * @example kangStepC(10, 16, { depthCm: 10, diffusivityM2s: 5e-7, leafArea: 2, litterArea: 0 }) // => 11.040
 */
export function kangStepC(soilC: number, airC: number, ground: KangGround): number {
  const cover = ground.litterArea + (airC > soilC ? ground.leafArea : 0);
  return soilC + (airC - soilC) * kangFactor(ground.depthCm, ground.diffusivityM2s, cover);
}
