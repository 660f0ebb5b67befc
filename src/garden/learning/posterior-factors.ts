import type { Middle } from '../../answers/question.js';
import { logistic } from '../../basics/numerics/logit.js';
import type { Posterior } from './count-posterior.js';
import type { Normal } from './prior.js';

/** The time factor of a sowing that lives. */
export const timeFactorOf = (posterior: Posterior): Middle => {
  const { middle, from, to } = middleOf(posterior.logTime, oddsOfTimes(posterior));
  return { middle: Math.exp(middle), from: Math.exp(from), to: Math.exp(to) };
};

/** The stand factor of a sowing that lives. */
export const standFactorOf = (posterior: Posterior): Middle => {
  const { middle, from, to } = middleOf(posterior.logitStand, oddsOfStands(posterior));
  return { middle: logistic(middle), from: logistic(from), to: logistic(to) };
};

/** The odds of each point of time, whatever the stand. */
export function oddsOfTimes({ odds, logTime, logitStand }: Posterior): Float64Array {
  const sums = new Float64Array(logTime.length);
  odds.forEach((one, i) => {
    sums[Math.floor(i / logitStand.length)]! += one;
  });
  return sums;
}

/** The odds of each point of the stand, whatever the time. */
export function oddsOfStands({ odds, logitStand }: Posterior): Float64Array {
  const sums = new Float64Array(logitStand.length);
  odds.forEach((one, i) => {
    sums[i % logitStand.length]! += one;
  });
  return sums;
}

const middleOf = (points: Float64Array, odds: Float64Array): Middle => ({
  middle: quantileOf(points, odds, 0.5),
  from: quantileOf(points, odds, 0.1),
  to: quantileOf(points, odds, 0.9),
});

/** Each point stands for what is nearest to it. */
function quantileOf(points: Float64Array, odds: Float64Array, share: number): number {
  const step = points[1]! - points[0]!;
  let sum = 0;
  let i = 0;
  while (i < points.length - 1 && sum + odds[i]! < share) sum += odds[i++]!;
  return points[i]! + step * ((share - sum) / Math.max(odds[i]!, 1e-300) - 0.5);
}

/**
 * What counts say alone, apart from what was supposed before them, as a normal distribution.
 *
 * @param before What was supposed.
 * @param points Of the quantity. Shape (n).
 * @param odds   After the counts. Shape (n), adding up to 1.
 * @returns The normal distribution that would turn `before` into one of the same mean and spread; null where the counts
 * have hardly narrowed it.
 */
export function likelihoodAsGaussian(before: Normal, points: Float64Array, odds: Float64Array): Normal | null {
  let mean = 0;
  points.forEach((point, i) => {
    mean += point * odds[i]!;
  });
  // Each point stands for what is nearest to it, so that no counts are ever taken as exact.
  let variance = (points[1]! - points[0]!) ** 2 / 12;
  points.forEach((point, i) => {
    variance += odds[i]! * (point - mean) ** 2;
  });
  const precision = 1 / variance - 1 / before.sd ** 2;
  if (precision * before.sd ** 2 < MIN_INFORMATION) return null;
  return { mean: (mean / variance - before.mean / before.sd ** 2) / precision, sd: 1 / Math.sqrt(precision) };
}

/** Less than this, beside what was known before, is nothing. */
const MIN_INFORMATION = 0.2;
