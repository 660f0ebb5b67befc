/**
 * The value at x of the broken line through the knots (xs, ys).
 *
 * Beyond the ends the line stays level at its end value. Two knots at the same x make a step: x itself gets the first
 * of the two, anything above it the second.
 *
 * @param x  Position, in the unit of xs; finite.
 * @param xs Knots, never falling. Shape (n), n >= 1.
 * @param ys Values at the knots. Shape (n).
 * @returns The value at x, in the unit of ys.
 *
 * Formula: y = y[i-1] + (y[i] - y[i-1]) (x - x[i-1]) / (x[i] - x[i-1]), i the first knot with x[i] >= x
 * Cost: O(n), no allocation; the crops' lines have about ten knots.
 * @example interpolate(12.5, [10, 15], [1, 2]) // => 1.5
 */
export function interpolate(x: number, xs: ArrayLike<number>, ys: ArrayLike<number>): number {
  const last = xs.length - 1;
  if (x <= xs[0]!) return ys[0]!;
  for (let i = 1; i <= last; i++) {
    const right = xs[i]!;
    if (x <= right) {
      const left = xs[i - 1]!;
      return ys[i - 1]! + ((ys[i]! - ys[i - 1]!) * (x - left)) / (right - left);
    }
  }
  return ys[last]!;
}
