/**
 * Days from each day to the next frost.
 *
 * @param minC   Minima of the air, day by day [°C]. Shape (n); NaN is no frost.
 * @param limitC A minimum at or below it is one [°C].
 * @returns Shape (n + 1): 0 where the day itself has one, Infinity where none comes in the days known.
 * @example frostAhead of 5, 0 and 5 °C at a limit of 0 °C, on the first of them // => 1
 */
export function frostAhead(minC: ArrayLike<number>, limitC: number): Float64Array {
  const ahead = new Float64Array(minC.length + 1).fill(Infinity);
  for (let day = minC.length - 1; day >= 0; day--) ahead[day] = minC[day]! <= limitC ? 0 : ahead[day + 1]! + 1;
  return ahead;
}
