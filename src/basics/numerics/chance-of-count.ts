import { ScienceError } from '../errors.js';
import { gaussLegendre } from './gauss-legendre.js';

/** The distribution of a share, 0 to 1, that is not known exactly. */
export interface UncertainShare {
  /** The probability that the share is at least this: 1 at 0, never rising. */
  readonly atLeast: (share: number) => number;
  /** Points where `atLeast` jumps, has a corner, or begins or ends a steep fall. */
  readonly corners: readonly number[];
}

const { at, weights } = gaussLegendre(64);
/** Half width of the integration range in the arc sine of the share, in standard deviations. */
const REACH_SD = 9;
/** The standard deviation of the arc sine of a share of n even chances, times the root of n. */
const ARC_SD = 0.5;

/**
 * The probability that at least k of n succeed, when all share one chance, which itself is uncertain: a binomial
 * distribution mixed over the share. With a beta distribution for the share it is the beta-binomial.
 *
 * At least k of n succeed when the k-th smallest of n uniform draws is within the share. That draw has a beta
 * distribution with shapes k and n-k+1, over which the share's own probability is averaged. No sum over counts is
 * needed, so n may be millions.
 *
 * @param k     Successes wanted, a whole number, 0 or more.
 * @param n     Trials, a whole number, 0 or more.
 * @param share Distribution of the chance of each.
 * @returns A probability, 0 to 1.
 * @throws {ScienceError} `out-of-range` unless k and n are whole numbers from 0 on.
 *
 * Formula: P(X >= k) = ∫ P(share >= b) Beta(b; k, n-k+1) db, in the arc sine of the root of b, in which its density is
 * nearly even in width; 64 Gauss-Legendre nodes between corners, divided by the same nodes' sum of the density.
 * Accuracy: max abs error 2e-9 against scipy's betabinom and binom (fixtures/golden/chance-of-count.json).
 * Source: David, Nagaraja (2003). Order Statistics, 3rd ed., 2.1 (the k-th smallest), from memory; the mixture is ours.
 */
export function chanceOfCount(k: number, n: number, share: UncertainShare): number {
  if (!(Number.isInteger(k) && Number.isInteger(n) && k >= 0 && n >= 0)) {
    throw new ScienceError('out-of-range', `chanceOfCount takes whole numbers from 0 on, not ${k} of ${n}`);
  }
  if (k === 0) return 1;
  if (k > n) return 0;
  const middle = Math.asin(Math.sqrt((k - 0.5) / n));
  const reach = (REACH_SD * ARC_SD) / Math.sqrt(n);
  const [from, to] = [Math.max(0, middle - reach), Math.min(Math.PI / 2, middle + reach)];
  const ends = share.corners
    .map((corner) => Math.asin(Math.sqrt(corner)))
    .filter((end) => end > from && end < to)
    .sort((one, other) => one - other);
  const logDensity = (angle: number): number =>
    (2 * k - 1) * Math.log(Math.sin(angle)) + (2 * (n - k) + 1) * Math.log(Math.cos(angle));
  const highest = logDensity(middle);
  let [sum, whole] = [0, 0];
  [from, ...ends].forEach((start, i) => {
    const half = ((ends[i] ?? to) - start) / 2;
    at.forEach((x, node) => {
      const angle = start + half * (1 + x);
      const weight = half * weights[node]! * Math.exp(logDensity(angle) - highest);
      whole += weight;
      if (weight > 0) sum += weight * share.atLeast(Math.sin(angle) ** 2);
    });
  });
  return Math.min(1, sum / whole);
}
