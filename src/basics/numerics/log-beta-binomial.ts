import { gammaln } from 'simple-statistics';

const logBeta = (a: number, b: number): number => gammaln(a) + gammaln(b) - gammaln(a + b);

/**
 * The natural logarithm of the beta-binomial probability: k successes of n, with a beta-distributed chance.
 *
 * @param k Successes, whole, 0 to n.
 * @param n Trials, whole, n >= 0.
 * @param a First shape of the beta, a > 0.
 * @param b Second shape, b > 0.
 * @returns ln of C(n, k) B(k + a, n - k + b) / B(a, b).
 *
 * Source: Johnson, Kemp, Kotz (2005). Univariate Discrete Distributions, 3rd ed., 6.2.2.
 * @example Math.exp(logBetaBinomial(1, 2, 1, 1)) // => 0.333333
 */
export const logBetaBinomial = (k: number, n: number, a: number, b: number): number =>
  -Math.log(n + 1) - logBeta(k + 1, n - k + 1) + logBeta(k + a, n - k + b) - logBeta(a, b);
