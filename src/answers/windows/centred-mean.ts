/**
 * Means over the days around each day, of those that have a value.
 *
 * @param values Shape (n); NaN has none.
 * @param days   Odd: so many days, the middle one the day itself.
 * @returns Shape (n); NaN where none of them has a value.
 * @example centredMean([0, 0, 3], 3) // => [0, 1, 1.5]
 */
export function centredMean(values: ArrayLike<number>, days: number): Float64Array {
  const n = values.length;
  const reach = (days - 1) / 2;
  return Float64Array.from({ length: n }, (_, day) => {
    let [sum, known] = [0, 0];
    for (let i = Math.max(0, day - reach); i <= Math.min(n - 1, day + reach); i++) {
      if (Number.isNaN(values[i]!)) continue;
      sum += values[i]!;
      known++;
    }
    return sum / known;
  });
}
