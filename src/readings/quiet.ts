import type { Judged } from './doubt-input.js';
import type { DoubtLimits } from './doubt-limits.js';

/** What a piece of a record shows at a glance, so that tests that would find nothing there need not look. */
export interface Quiet {
  /** All values lie within what there can be. */
  isWithin: boolean;
  /** The value nearest to the file's own 0 is so far from it [K]. */
  nearestZeroK: number;
  /** The largest change from one reading to the next [K]. */
  largestChangeK: number;
}

/**
 * Looks at readings from..to-1 and the one before them, in one pass.
 *
 * @param rawZeroC What a 0 of the file means [°C].
 * @param quiet    What earlier pieces have shown; written to.
 */
export function lookAtPiece(
  { valueC }: Judged,
  { coldestC, hottestC }: DoubtLimits,
  rawZeroC: number,
  from: number,
  to: number,
  quiet: Quiet,
): void {
  let { isWithin, nearestZeroK, largestChangeK } = quiet;
  let before = valueC[Math.max(0, from - 1)]!;
  for (let i = from; i < to; i++) {
    const value = valueC[i]!;
    if (!(value >= coldestC && value <= hottestC)) isWithin = false;
    const zeroK = Math.abs(value - rawZeroC);
    if (zeroK < nearestZeroK) nearestZeroK = zeroK;
    const changeK = Math.abs(value - before);
    if (changeK > largestChangeK) largestChangeK = changeK;
    before = value;
  }
  quiet.isWithin = isWithin;
  quiet.nearestZeroK = nearestZeroK;
  quiet.largestChangeK = largestChangeK;
}
