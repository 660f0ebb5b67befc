import { harmonicAt } from '../basics/numerics/harmonic-fit.js';
import { monthCourse } from './month-course.js';

/** Long-term means of the daily maximum and minimum [°C], January first. Shape (12). */
export interface Normals {
  readonly meanMaxC: readonly number[];
  readonly meanMinC: readonly number[];
}

const WAVES = 2;

/**
 * The climatological daily minima and maxima, from monthly means.
 *
 * @param normals Twelve means of each.
 * @param days    Days of the year; 1 January is 1. Shape (n).
 * @returns Minima and maxima [°C]. Shape (n); a minimum is never above its maximum.
 * @throws ScienceError never, for finite normals.
 *
 * Formula: `monthCourse` with two annual harmonics.
 * Source: Epstein (1991). On obtaining daily climatological values from monthly means. J. Climate 4: 365-368.
 * @example climatologicalAirOf(twelve months at 5 and 15 °C, [1, 180]) // => { minC: [5, 5], maxC: [15, 15] }
 */
export function climatologicalAirOf(
  { meanMaxC, meanMinC }: Normals,
  days: ArrayLike<number>,
): { readonly minC: Float64Array; readonly maxC: Float64Array } {
  const minC = throughMonths(meanMinC, days);
  const maxC = throughMonths(meanMaxC, days).map((high, i) => Math.max(high, minC[i]!));
  return { minC, maxC };
}

function throughMonths(means: readonly number[], days: ArrayLike<number>): Float64Array {
  const course = monthCourse(means, WAVES);
  return Float64Array.from(days, (day) => harmonicAt(course, day - 0.5));
}
