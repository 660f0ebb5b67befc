import { harmonicAt, harmonicFit } from '../../basics/numerics/harmonic-fit.js';
import { coversYear } from '../probe/covers-year.js';

/** Longest gap filled by a straight line [d]. */
const BRIDGED_DAYS = 3;
const HARMONICS = 2;

/**
 * Daily values without gaps: up to three missing days are linear, longer gaps follow the climatological course.
 *
 * A record that does not cover a whole year (`coversYear`) gets linear gaps only. The ends are held constant.
 *
 * @param dayOfYear Day of the year of each value. Shape (n).
 * @param values    Daily values; NaN is missing. Shape (n), one number at least.
 * @returns The values, none missing. Shape (n).
 * @throws ScienceError `empty` when every value is missing.
 *
 * Formula: the course of two harmonics, adjusted to the values on either side by a straight line of differences.
 * @example fillDays([1, 2, 3, 4], [1, NaN, 3, NaN]) // => [1, 2, 3, 3]
 */
export function fillDays(dayOfYear: ArrayLike<number>, values: ArrayLike<number>): Float64Array {
  const filled = Float64Array.from(values);
  const known = filled.reduce((count, value) => (Number.isNaN(value) ? count : count + 1), 0);
  if (known === filled.length) return filled;
  const course = harmonicFit(dayOfYear, values, coversYear(dayOfYear, values) ? HARMONICS : 0);
  let last = -1;
  for (let i = 0; i <= filled.length; i++) {
    if (i < filled.length && Number.isNaN(values[i]!)) continue;
    const missing = i - last - 1;
    const usual = (j: number): number => (missing > BRIDGED_DAYS ? harmonicAt(course, dayOfYear[j]!) : 0);
    const before = last >= 0 ? values[last]! - usual(last) : NaN;
    const after = i < filled.length ? values[i]! - usual(i) : NaN;
    for (let j = last + 1; j < i; j++) {
      const share = (j - last) / (missing + 1);
      const ends = Number.isNaN(before) ? after : Number.isNaN(after) ? before : before + (after - before) * share;
      filled[j] = ends + usual(j);
    }
    last = i;
  }
  return filled;
}
