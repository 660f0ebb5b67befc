import { ScienceError } from '../errors.js';
import { choleskyFactor, solveLower, solveUpper } from './cholesky.js';

/** Mean length of the Gregorian year [d]. */
export const YEAR_DAYS = 365.2425;

/** Annual harmonics: value(t) = mean + Σ cosine[k-1] cos(2πkt/year) + sine[k-1] sin(2πkt/year). */
export interface Harmonics {
  readonly mean: number;
  readonly cosine: Float64Array;
  readonly sine: Float64Array;
}

/**
 * Annual harmonics fitted to daily values by least squares.
 *
 * @param days      Times, in any common count of days (or in the unit of `yearDays`). Shape (n).
 * @param values    Values in any unit; NaN is left out. Shape (n), at least 2 harmonics + 1 numbers.
 * @param harmonics Number of harmonics: the annual, the semi-annual ... 1 to 4.
 * @param yearDays  Length of a year in the unit of `days`.
 * @returns Mean, and each harmonic's cosine and sine amplitudes in the unit of the values.
 * @throws ScienceError `empty` for too few values, `out-of-range` when they lie too close in the year to separate the
 * harmonics.
 *
 * Source: Wilks (2011). Statistical Methods in the Atmospheric Sciences, ch. 9: harmonic analysis.
 */
export function harmonicFit(
  days: ArrayLike<number>,
  values: ArrayLike<number>,
  harmonics: number,
  yearDays = YEAR_DAYS,
): Harmonics {
  const size = 2 * harmonics + 1;
  const matrix = new Float64Array(size * size);
  const right = new Float64Array(size);
  const row = new Float64Array(size).fill(1);
  let used = 0;
  for (let i = 0; i < days.length; i++) {
    const value = values[i]!;
    if (Number.isNaN(value)) continue;
    used++;
    for (let k = 1; k <= harmonics; k++) {
      const angle = (2 * Math.PI * k * days[i]!) / yearDays;
      row[2 * k - 1] = Math.cos(angle);
      row[2 * k] = Math.sin(angle);
    }
    for (let j = 0; j < size; j++) {
      right[j]! += row[j]! * value;
      for (let k = 0; k <= j; k++) matrix[j * size + k]! += row[j]! * row[k]!;
    }
  }
  if (used < size) throw new ScienceError('empty', `harmonicFit takes at least ${size} values, not ${used}`);
  const lower = choleskyFactor(matrix, size);
  const found = solveUpper(lower, solveLower(lower, right));
  return {
    mean: found[0]!,
    cosine: Float64Array.from({ length: harmonics }, (_, k) => found[2 * k + 1]!),
    sine: Float64Array.from({ length: harmonics }, (_, k) => found[2 * k + 2]!),
  };
}

/**
 * The value of fitted harmonics on a day.
 *
 * @param harmonics The fit.
 * @param day       The day, in the fit's count of days.
 * @param yearDays  The fit's length of a year.
 */
export function harmonicAt({ mean, cosine, sine }: Harmonics, day: number, yearDays = YEAR_DAYS): number {
  let value = mean;
  for (let k = 1; k <= cosine.length; k++) {
    const angle = (2 * Math.PI * k * day) / yearDays;
    value += cosine[k - 1]! * Math.cos(angle) + sine[k - 1]! * Math.sin(angle);
  }
  return value;
}
