/** Share of sowings in the wide component, and its width in standard deviations of the narrow one. Our assumption. */
const CONTAMINATION_SHARE = 0.05;
const CONTAMINATION_SCALE = 2.5;

/**
 * Density of a contaminated normal distribution, up to a factor: its tails are wider than a normal one's.
 *
 * @param z Distance from the middle, in standard deviations of the narrow component.
 * @returns 1 at most.
 *
 * Formula: 0.95 φ(z) + 0.05 φ(z/2.5)/2.5, over φ(0).
 * @example contaminatedNormal(0) // => 0.97
 */
export const contaminatedNormal = (z: number): number =>
  (1 - CONTAMINATION_SHARE) * Math.exp(-0.5 * z * z) +
  (CONTAMINATION_SHARE / CONTAMINATION_SCALE) * Math.exp(-0.5 * (z / CONTAMINATION_SCALE) ** 2);
