/**
 * Sums of values up to each day, of which `meanOver` makes means.
 *
 * @param values Shape (n); NaN: not known.
 * @returns Shape (n + 1); NaN after a value that is not known.
 * @example sumsUpTo([1, 2]) // => [0, 1, 3]
 */
export function sumsUpTo(values: ArrayLike<number>): Float64Array {
  const sums = new Float64Array(values.length + 1);
  for (let day = 0; day < values.length; day++) sums[day + 1] = sums[day]! + values[day]!;
  return sums;
}

/**
 * Mean of the days from one up to, not including, another, of those that lie in the record.
 *
 * @param sums As `sumsUpTo` gives them. Shape (n + 1).
 * @returns NaN where there are none, or one is not known.
 * @example meanOver([0, 1, 3], 0, 2) // => 1.5
 */
export function meanOver(sums: Float64Array, fromDay: number, toDay: number): number {
  const from = Math.max(0, fromDay);
  const to = Math.min(sums.length - 1, toDay);
  return to > from ? (sums[to]! - sums[from]!) / (to - from) : NaN;
}
