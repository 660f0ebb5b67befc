import { linearRegression, linearRegressionLine, rSquared } from 'simple-statistics';

/** A straight line y = intercept + slope x, and the share of the variance of y that it explains. */
export interface FittedLine {
  readonly slope: number;
  readonly intercept: number;
  readonly rSquared: number;
}

/**
 * The least-squares line through points.
 *
 * @param xs Shape (n), n >= 2, not all equal.
 * @param ys Shape (n).
 * @returns Slope and intercept, in the units given, and r squared.
 * @example fitLine([0, 1, 2], [1, 3, 5]) // => { slope: 2, intercept: 1, rSquared: 1 }
 */
export function fitLine(xs: readonly number[], ys: readonly number[]): FittedLine {
  const points = xs.map((x, i) => [x, ys[i]!]);
  const { m, b } = linearRegression(points);
  return { slope: m, intercept: b, rSquared: rSquared(points, linearRegressionLine({ m, b })) };
}
