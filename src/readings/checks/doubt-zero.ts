import { HOUR_MS } from '../../basics/calendar.js';
import type { DoubtTest, Judged } from './doubt-input.js';
import { type DoubtLimits, TELLING_MS } from './doubt-limits.js';
import type { VerdictBook } from './doubt-verdicts.js';

/** A zero nearer to its neighbours than this may be the weather's [K]. Chosen here. */
export const WELL_AWAY_K = 3;

/** Readings about a day apart stand at the same time of day and can be compared again [ms]. Chosen here. */
const ABOUT_A_DAY_MS = [20 * HOUR_MS, 36 * HOUR_MS] as const;

/** Impossible change of soil from one day to the next [K]: twice the published subsurface limit of 5 °C a day. */
const SOIL_DAY_K = 10;

/**
 * Marks zeros that a failed probe left: a run of the file's own 0, of any length, that is entered or left by a jump,
 * where the other side is a jump too or cannot be known (the record's end, a gap). Soil that freezes comes to 0.0 °C
 * slowly, stays there for days and leaves it slowly: one slow side keeps the run.
 *
 * A jump is a change of more than the spike limit within an hour, that times the square root of the hours where it is
 * shorter (as heat goes into soil), that times the hours up to three; never less than 3 K. Chosen here: an exact zero
 * is a sign of its own, so less is asked than of a step. Between readings a day apart: 10 K in soil, 18 K in air.
 *
 * @param rawZeroC What the file's 0 is in °C: 0, -17.78 or -273.15.
 * @param air      Whether it is air; soil otherwise.
 * @param code     One for each reading, 0 where not dropped so far; written to.
 * @example of 14.1, 14.2, 0, 0, 14.4 °C, ten minutes apart: readings dropped // => 2
 */
export function failedZeroTest(
  { atMs, valueC, count }: Judged,
  limits: DoubtLimits,
  rawZeroC: number,
  air: boolean,
  book: VerdictBook,
  code: Uint8Array,
): DoubtTest {
  const tolerance = zeroToleranceK(rawZeroC);

  /** 1: a jump lies between the run and a reading beside it; -1: a slow change; 0: not known. */
  const passage = (beside: number, inRun: number): number => {
    if (beside < 0 || beside >= count) return 0;
    const dtMs = Math.abs(atMs[inRun]! - atMs[beside]!);
    const changeK = Math.abs(valueC[beside]! - rawZeroC);
    if (dtMs <= TELLING_MS) return changeK > jumpK(limits.spikeK, dtMs / HOUR_MS) ? 1 : -1;
    if (dtMs < ABOUT_A_DAY_MS[0] || dtMs > ABOUT_A_DAY_MS[1]) return 0;
    return changeK > (air ? jumpK(limits.spikeK, 3) : SOIL_DAY_K) ? 1 : -1;
  };

  let before = -1;
  let first = -1;
  let last = -1;
  const endRun = (after: number): void => {
    if (passage(before, first) + passage(after, last) > 0) {
      const failed = book.codeOf('failedZero');
      for (let i = first; i <= last; i++) if (code[i] === 0) code[i] = failed;
    }
    first = -1;
  };

  return (from, to) => {
    for (let i = from; i < to; i++) {
      if (code[i] !== 0) continue;
      if (Math.abs(valueC[i]! - rawZeroC) <= tolerance) {
        if (first < 0) first = i;
        last = i;
        continue;
      }
      if (first >= 0) endRun(i);
      before = i;
    }
    if (to === count && first >= 0) endRun(count);
  };
}

/**
 * How near to the file's own 0 a value is one [K]: half a unit in the last place of a single-precision value may lie
 * between a zero and its conversion.
 */
export const zeroToleranceK = (rawZeroC: number): number =>
  Math.max(1e-6, Math.abs(rawZeroC - Math.fround(rawZeroC)) + 1e-9);

const jumpK = (spikeK: number, hours: number): number =>
  Math.max(WELL_AWAY_K, spikeK * (hours < 1 ? Math.sqrt(hours) : hours));
