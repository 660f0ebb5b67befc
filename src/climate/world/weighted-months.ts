import { MONTHS } from './station-table.js';

/**
 * The weighted mean of some stations' months.
 *
 * @param cellAt A station's value of a month, January is 0; NaN: missing, left out there and the others' weights made one again.
 * @param weights Weights of the stations, together 1. Shape (n).
 * @returns The months, in the unit of the values; NaN where no station has one. Shape (12).
 * @throws ScienceError never.
 *
 * @example weightedMonths((station) => [10, 20][station]!, [0.8, 0.2]) // => twelve times 12
 */
export function weightedMonths(
  cellAt: (station: number, month: number) => number,
  weights: ArrayLike<number>,
): Float64Array {
  return Float64Array.from({ length: MONTHS }, (_, month) => {
    let sum = 0;
    let known = 0;
    for (let station = 0; station < weights.length; station++) {
      const value = cellAt(station, month);
      if (Number.isNaN(value)) continue;
      sum += weights[station]! * value;
      known += weights[station]!;
    }
    return sum / known;
  });
}
