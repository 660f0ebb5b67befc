import { normalQuantile } from './normal-quantile.js';
import { weibullQuantile } from './weibull-quantile.js';

/** Frosts needed to assume that their days are normally distributed. */
const NORMAL_FROM = 20;

/**
 * The day that leaves a risk of frost: after it in spring, before it in autumn.
 *
 * @param sorted  Days of the last spring or first autumn frost, in the seasons that had one, rising. Shape (n).
 * @param seasons Number of known seasons, with a frost or without; >= n.
 * @param risk    Remaining probability of a frost, 0 to 1.
 * @param side    Spring or autumn.
 * @returns The day, not rounded; null when the risk is never so high or the seasons are too few for it.
 * @throws ScienceError never.
 *
 * Formula: q = n/seasons; in spring risk = q (1 - G(d)), in autumn q G(d). G: below 20 frosts the straight line through
 * positions i/(n + 1), from 20 on the normal distribution of their mean and standard deviation.
 * Source: Vestal (1971). First and last occurrences of low temperatures during the cold season. Mon. Weather Rev. 99:
 * 650-652, for the mix of seasons with a frost and without; Thom, Shaw (1958), as `normalQuantile`.
 * @example riskDay([121, 126, 129, 130, 131, 134, 139, 140, 143, 147, 147], 11, 0.5, 'spring') // => 134
 */
export function riskDay(
  sorted: readonly number[],
  seasons: number,
  risk: number,
  side: 'spring' | 'autumn',
): number | null {
  const ofFrosts = (risk * seasons) / sorted.length;
  const p = side === 'spring' ? 1 - ofFrosts : ofFrosts;
  if (!(p > 0 && p < 1)) return null;
  return sorted.length < NORMAL_FROM ? weibullQuantile(sorted, p) : normalQuantile(sorted, p);
}
