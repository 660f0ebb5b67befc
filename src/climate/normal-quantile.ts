import { mean, sampleStandardDeviation } from 'simple-statistics';
import { ScienceError } from '../basics/errors.js';
import { probit } from '../basics/numerics/probit.js';

/**
 * A quantile of the normal distribution fitted to values.
 *
 * @param values In any unit. Shape (n), n >= 2.
 * @param p      Probability, 0 to 1.
 * @returns The quantile, in the same unit; infinite for 0 and 1 unless all values are equal.
 * @throws ScienceError `empty` for fewer than two values.
 *
 * Formula: mean + z s, z = Φ⁻¹(p), s with n - 1
 * Source: Thom, Shaw (1958). Climatological analysis of freeze data for Iowa. Mon. Weather Rev. 86: 251-257.
 * @example normalQuantile([8, 10, 12], 0.9) // => 12.563
 */
export function normalQuantile(values: readonly number[], p: number): number {
  if (values.length < 2) throw new ScienceError('empty', 'normalQuantile takes at least two values');
  const sd = sampleStandardDeviation([...values]);
  return mean([...values]) + (sd === 0 ? 0 : probit(p) * sd);
}
