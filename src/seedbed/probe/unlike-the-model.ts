import { median, medianAbsoluteDeviation } from 'simple-statistics';

/** So many robust standard deviations from the usual difference nothing but a fault explains. */
const TOO_MANY_SD = 4;
/** A median absolute deviation is this share of a normal distribution's standard deviation. */
const SD_PER_MAD = 1.4826;
/** Closer than this to the usual difference the model itself may be the one that errs [K]. */
const MIN_DOUBTED_K = 6;
/** Fewer hours tell no usual difference. */
const MIN_HOURS = 72;

/**
 * Which readings nothing in the air explains: a probe pulled out, lying in the sun, or in another bed.
 *
 * @param residualsK Measured less modelled, hour by hour [K]; NaN where either is missing. Shape (n).
 * @returns The indices of the doubtful ones, rising; none where fewer than 72 hours are known.
 *
 * Formula: |r - median| > max(6 K, 4 · 1.4826 MAD)
 * Source: the idea, from networks that screen soil readings by a heat diffusion model; the limits are ours. Bare ground
 * at Hamburg, 2018: see the accuracy report.
 */
export function isProbeOutlier(residualsK: Float64Array): number[] {
  const known = [...residualsK].filter((residual) => !Number.isNaN(residual));
  if (known.length < MIN_HOURS) return [];
  const usual = median(known);
  const limit = Math.max(MIN_DOUBTED_K, TOO_MANY_SD * SD_PER_MAD * medianAbsoluteDeviation(known));
  const doubted: number[] = [];
  residualsK.forEach((residual, i) => {
    if (Math.abs(residual - usual) > limit) doubted.push(i);
  });
  return doubted;
}
