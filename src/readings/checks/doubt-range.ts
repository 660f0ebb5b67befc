import type { DoubtTest, Judged } from './doubt-input.js';
import type { DoubtLimits } from './doubt-limits.js';
import type { VerdictBook } from './doubt-verdicts.js';

/** Answer of common one-wire probes after power-on, and their readers' value for no answer [°C]. From memory. */
const POWER_ON_C = 85;
const NO_ANSWER_C = -127;

/**
 * Marks readings outside what there can be. Power-on and no-answer values lie outside for every medium and depth, so
 * they go however many come in a row; they are only told by their own name. In files in °F they come in many shapes
 * (29.4 °C among them), which are not looked for. A value that is no number is marked as too hot.
 *
 * @param code One for each reading, 0 so far; written to.
 * @example of 14, 85, 14 °C in soil: readings dropped // => 1
 */
export function rangeTest({ valueC }: Judged, limits: DoubtLimits, book: VerdictBook, code: Uint8Array): DoubtTest {
  const { coldestC, hottestC } = limits;
  return (from, to) => {
    for (let i = from; i < to; i++) {
      const value = valueC[i]!;
      if (value >= coldestC && value <= hottestC) continue;
      if (Math.abs(value - POWER_ON_C) < 1e-4) code[i] = book.codeOf('powerOn');
      else if (Math.abs(value - NO_ANSWER_C) < 1e-4) code[i] = book.codeOf('noAnswer');
      else code[i] = book.codeOf(value < coldestC ? 'tooCold' : 'tooHot');
    }
  };
}
