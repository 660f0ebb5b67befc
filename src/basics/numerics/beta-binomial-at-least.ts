import { logBetaBinomial } from './log-beta-binomial.js';

/**
 * The beta-binomial probability of at least k successes: a faster `chanceOfCount` for a beta-distributed share.
 *
 * @param k Successes at least, whole, 0 to n.
 * @param n Trials, whole, n >= 1; the cost grows with n, so at most some thousands.
 * @param a First shape of the beta, a > 0.
 * @param b Second shape, b > 0.
 * @returns A probability, 0 to 1.
 *
 * Formula: sums the terms on the side of k on which they fall; each follows from the one before by their ratio.
 * Source: Johnson, Kemp, Kotz (2005). Univariate Discrete Distributions, 3rd ed., 6.2.2.
 * @example betaBinomialAtLeast(1, 2, 1, 1) // => 0.666667
 */
export function betaBinomialAtLeast(k: number, n: number, a: number, b: number): number {
  const ratio = (j: number): number => ((n - j) * (j + a)) / ((j + 1) * (n - j - 1 + b));
  const isAbove = k * (a + b) >= n * a;
  let term = 1;
  let sum = 0;
  for (let j = k; isAbove ? j <= n : j > 0; ) {
    if (isAbove) {
      sum += term;
      term *= ratio(j++);
    } else {
      term /= ratio(--j);
      sum += term;
    }
    if (term < 1e-15 * sum) break;
  }
  const chance = sum * Math.exp(logBetaBinomial(k, n, a, b));
  return Math.min(1, Math.max(0, isAbove ? chance : 1 - chance));
}
