import { ScienceError } from '../errors.js';

/**
 * A quantile of values, each of which stands for the middle of its share.
 *
 * @param sorted Values, ascending. Shape (n), n >= 1.
 * @param p      Probability, 0 to 1.
 * @returns The value at position p n + 0.5, linear between neighbours, constant beyond the ends.
 * @throws ScienceError `empty` for no values.
 *
 * Formula: positions (i - 0.5)/n
 * Source: Hazen (1914). Storage to be provided in impounding reservoirs. Trans. Am. Soc. Civ. Eng. 77: 1539-1640.
 * @example hazenQuantile([8, 9, 10, 11, 12, 14, 20], 0.1) // => 8.2
 */
export function hazenQuantile(sorted: ArrayLike<number>, p: number): number {
  const n = sorted.length;
  if (n === 0) throw new ScienceError('empty', 'hazenQuantile takes at least one value');
  const position = Math.min(n - 1, Math.max(0, p * n - 0.5));
  const below = Math.floor(position);
  const above = Math.min(n - 1, below + 1);
  const low = sorted[below]!;
  // One or both neighbours may be infinite.
  return low === sorted[above] || position === below ? low : low + (position - below) * (sorted[above]! - low);
}
