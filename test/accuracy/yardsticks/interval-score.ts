/**
 * The score of a range that should hold the truth in all but a share of cases: its width, and a fine for missing.
 *
 * @param from     Its lower end, in any unit.
 * @param to       Its upper end, in the same.
 * @param missed   The share that may lie outside, 0 to 1: 0.2 for a range of 80 %.
 * @param observed What came, in the same.
 * @returns The score, in the same unit; the less the better.
 * @throws never.
 *
 * Formula: (u - l) + (2/α) (how far y lies outside)
 * Source: Gneiting, Raftery (2007), as `crpsNormal`, eqn 43.
 * @example intervalScore(10, 20, 0.2, 23) // => 40
 */
export const intervalScore = (from: number, to: number, missed: number, observed: number): number =>
  to - from + (2 / missed) * Math.max(0, from - observed, observed - to);
