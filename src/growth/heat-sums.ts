import { dayUnits } from './day-units.js';

/**
 * Heat units summed up from the first day on, so that any two days tell what grew between them.
 *
 * @param meanC        Means of the air, day by day [°C]. Shape (n); NaN: not known.
 * @param baseTempC    See `dayUnits` [°C].
 * @param ceilingTempC See `dayUnits` [°C].
 * @returns Shape (n + 1): [i] before day i; never falling; NaN after a day that is not known.
 * @example heatSums([14.4, 0, 30], 4.4, 24) // => [0, 10, 10, 29.6]
 */
export function heatSums(meanC: ArrayLike<number>, baseTempC: number, ceilingTempC: number): Float64Array {
  const sums = new Float64Array(meanC.length + 1);
  for (let day = 0; day < meanC.length; day++) {
    sums[day + 1] = sums[day]! + dayUnits(meanC[day]!, baseTempC, ceilingTempC);
  }
  return sums;
}
