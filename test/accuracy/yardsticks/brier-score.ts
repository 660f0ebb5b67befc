import { ScienceError } from '../../../src/basics/errors.js';

/**
 * The mean square by which probabilities missed what came.
 *
 * @param probabilities Each 0 to 1. Shape (n), n >= 1.
 * @param came          1 where it came, else 0. Shape (n).
 * @returns The score, 0 to 1; the less the better.
 * @throws ScienceError `empty` for none.
 *
 * Source: Brier (1950). Verification of forecasts expressed in terms of probability. Mon. Weather Rev. 78: 1-3.
 * @example brierScore([0.9, 0.7, 0.2, 0.4], [1, 1, 0, 1]) // => 0.125
 */
export function brierScore(probabilities: ArrayLike<number>, came: ArrayLike<number>): number {
  const n = probabilities.length;
  if (n === 0) throw new ScienceError('empty', 'brierScore takes at least one probability');
  let sum = 0;
  for (let i = 0; i < n; i++) sum += (probabilities[i]! - came[i]!) ** 2;
  return sum / n;
}
