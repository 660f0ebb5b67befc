import type { Normal } from './prior.js';

/** Below this gain in precision, as a share of the prior's, counts teach nothing. Our judgement. */
const MIN_INFORMATION = 0.2;

/**
 * The likelihood as a Gaussian: the posterior divided by the prior.
 *
 * @param prior  The normal distribution before the counts.
 * @param points Values of the quantity. Shape (n), evenly spaced.
 * @param odds   Their probability after the counts. Shape (n), adding up to 1.
 * @returns The normal distribution that turns `prior` into one of the posterior's mean and spread; null where the counts
 * have hardly narrowed it.
 */
export function likelihoodAsGaussian(prior: Normal, points: Float64Array, odds: Float64Array): Normal | null {
  let mean = 0;
  points.forEach((point, i) => {
    mean += point * odds[i]!;
  });
  // A point stands for the interval around it, so counts are never exact.
  let variance = (points[1]! - points[0]!) ** 2 / 12;
  points.forEach((point, i) => {
    variance += odds[i]! * (point - mean) ** 2;
  });
  const precision = 1 / variance - 1 / prior.sd ** 2;
  if (precision * prior.sd ** 2 < MIN_INFORMATION) return null;
  return { mean: (mean / variance - prior.mean / prior.sd ** 2) / precision, sd: 1 / Math.sqrt(precision) };
}
