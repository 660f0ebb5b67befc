/**
 * The never-falling values nearest to the given ones, by least squares with equal weights.
 *
 * It removes noise from a curve that must rise: neighbours that fall are pooled into their mean until none falls.
 *
 * @param values Values in order. Shape (n), finite, any unit.
 * @returns Values that never fall. Shape (n); a new array.
 *
 * Source: Ayer, Brunk, Ewing, Reid, Silverman (1955). An empirical distribution function for sampling with incomplete
 * information. Ann. Math. Stat. 26: 641-647 (pool adjacent violators). Cost: O(n).
 * @example isotonic([72, 70, 40, 97]) // => [60.666666666666664, 60.666666666666664, 60.666666666666664, 97]
 */
export function isotonic(values: readonly number[]): number[] {
  const pools: { sum: number; count: number }[] = [];
  for (const value of values) {
    let pool = { sum: value, count: 1 };
    for (
      let before = pools.at(-1);
      before && before.sum / before.count > pool.sum / pool.count;
      before = pools.at(-1)
    ) {
      pools.pop();
      pool = { sum: before.sum + pool.sum, count: before.count + pool.count };
    }
    pools.push(pool);
  }
  return pools.flatMap(({ sum, count }) => new Array<number>(count).fill(sum / count));
}
