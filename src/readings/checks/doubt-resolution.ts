import type { Judged } from './doubt-input.js';

/** Values looked at, spread evenly over the record: enough, and cheap. */
const SAMPLE = 20_000;

/** Share of the values that lie on the grid: means of two readings at one instant lie beside it. Chosen here. */
const ON_GRID_SHARE = 0.98;

/** Largest distance of a value from a count, in counts: the remainder of hundredths converted into the other unit. */
const BESIDE = 0.01;

/** Coarse grids, coarsest first: what 1 count is [K], and the counts of a temperature. */
const GRIDS: readonly { readonly countK: number; counts(tempC: number): number }[] = [
  { countK: 1, counts: (tempC) => tempC },
  { countK: 5 / 9, counts: (tempC) => tempC * 1.8 + 32 },
  { countK: 0.5, counts: (tempC) => 2 * tempC },
];

/**
 * The step in which a coarse thermometer writes [K]: 1 (whole °C), 5/9 (whole °F) or 0.5; 0 for every finer one.
 * Told by the values, not by their changes, so that a record that never changes can be judged as well.
 *
 * Cost: O(1) in the readings.
 * @example resolutionOf of 12, 12.5, 12.5, 13 °C // => 0.5
 */
export function resolutionOf({ valueC, count }: Judged): number {
  const stride = Math.max(1, Math.floor(count / SAMPLE));
  const mostBeside = (1 - ON_GRID_SHARE) * Math.ceil(count / stride);
  for (const { countK, counts } of GRIDS) {
    let seen = 0;
    let beside = 0;
    for (let i = 0; i < count && beside <= mostBeside; i += stride) {
      // A probe stuck at a whole degree would speak for the whole record: only new values count.
      if (i > 0 && valueC[i] === valueC[i - 1]) continue;
      const n = counts(valueC[i]!);
      seen++;
      if (!(Math.abs(n - Math.round(n)) <= BESIDE)) beside++;
    }
    if (seen > 0 && seen - beside >= ON_GRID_SHARE * seen) return countK;
  }
  return 0;
}
