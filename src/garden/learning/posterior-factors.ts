import type { Middle } from '../../answers/question.js';
import { logistic } from '../../basics/numerics/logit.js';
import type { Posterior } from './count-posterior.js';

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
