import { median, medianAbsoluteDeviation } from 'simple-statistics';

/** Robust standard deviations from the median beyond which only a fault explains a residual. */
const TOO_MANY_SD = 4;
/** Standard deviation of a normal distribution over its median absolute deviation. */
const SD_PER_MAD = 1.4826;
/** Below this distance from the median the model itself may be wrong [K]. */
const MIN_OUTLIER_K = 6;
/** Fewer hours give no reliable median. */
const MIN_HOURS = 72;

/**
 * Outliers that no air temperature explains: a probe pulled out, lying in the sun, or in another bed.
 *
 * @param residualsK Measured less modelled, hour by hour [K]; NaN when either is missing. Shape (n).
 * @returns The outliers' indices, rising; none when fewer than 72 hours are known.
 *
 * Formula: |r - median| > max(6 K, 4 · 1.4826 MAD)
 * Source: the idea, from networks that screen soil readings by a heat diffusion model; the limits are ours. Bare ground
 * at Hamburg, 2018: see the accuracy report.
 */
export function probeOutliers(residualsK: Float64Array): number[] {
  const known = [...residualsK].filter((residual) => !Number.isNaN(residual));
  if (known.length < MIN_HOURS) return [];
  const middle = median(known);
  const limit = Math.max(MIN_OUTLIER_K, TOO_MANY_SD * SD_PER_MAD * medianAbsoluteDeviation(known));
  const outliers: number[] = [];
  residualsK.forEach((residual, i) => {
    if (Math.abs(residual - middle) > limit) outliers.push(i);
  });
  return outliers;
}
