/**
 * A quantile of future values from a few observed ones, without extrapolation beyond them.
 *
 * @param sorted Values, rising. Shape (n).
 * @param p      Probability, 0 to 1.
 * @returns The value at position p (n + 1), linear between neighbours; or null when that lies outside 1 to n.
 * @throws ScienceError never.
 *
 * Formula: positions i/(n + 1)
 * Source: Weibull (1939). A statistical theory of the strength of materials. Ing. Vetensk. Akad. Handl. 151.
 * @example weibullQuantile([126, 129, 130, 134, 139, 140, 143, 147, 147], 0.8) // => 147
 */
export function weibullQuantile(sorted: ArrayLike<number>, p: number): number | null {
  const n = sorted.length;
  // Rounding may put a position just outside: 0.1 (9 + 1) is 1.
  const position = Math.round(p * (n + 1) * 1e9) / 1e9;
  if (!(position >= 1 && position <= n)) return null;
  const below = Math.floor(position);
  const low = sorted[below - 1]!;
  return low + (position - below) * (sorted[Math.min(n, below + 1) - 1]! - low);
}
