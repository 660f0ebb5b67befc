import { HOUR_MS } from '../../basics/calendar.js';
import type { Medium } from '../../basics/series.js';
import { longestJoinedMs } from '../time/step.js';
import type { Judged } from './doubt-input.js';
import { limitsAt } from './doubt-limits.js';
import { rangeTest } from './doubt-range.js';
import { resolutionOf } from './doubt-resolution.js';
import { spikeTest } from './doubt-spike.js';
import { stepTest } from './doubt-step.js';
import { MIN_STUCK_MS, stuckTest } from './doubt-stuck.js';
import { type ReadingVerdict, verdictBook } from './doubt-verdicts.js';
import { failedZeroTest, WELL_AWAY_K, zeroToleranceK } from './doubt-zero.js';
import { quietLook } from './quiet.js';

export type { ReadingVerdict as Verdict } from './doubt-verdicts.js';

export interface ReadingsToJudge extends Judged {
  readonly medium: Medium;
  /** [cm]; null: at the seed, some 1 to 2 cm down. Of no account for air. */
  readonly probeDepthCm: number | null;
  /** Meaning of a 0 of the file in °C: 0, -17.78 or -273.15. */
  readonly rawZeroC: number;
  /** Usual time between readings [ms]; null: not known. */
  readonly stepMs: number | null;
}

export interface ReadingsJudgement {
  /** For each reading 0 where it is good, otherwise its place in `verdicts`. Shape (count). */
  readonly code: Uint8Array;
  /** Under 256; the first stands for a good reading. */
  readonly verdicts: readonly ReadingVerdict[];
}

/** Readings a test judges between two pauses. */
const PIECE = 50_000;

/**
 * Which readings a working thermometer cannot have written (dropped), and which it hardly can (doubtful, kept).
 *
 * Range, failed zeros and gross spikes go first, so that no neighbour is judged by them; then steps and runs of one
 * value. A step alone is never dropped: soil is dug, watered and uncovered. What is judged, the limits and their
 * sources: `doubt-*.ts`. In a record whose readings are more than 3 h apart, spikes and steps are not looked for.
 *
 * @returns After pauses, each within 100,000 readings of work (marking a run adds a byte for each of its readings), codes
 * and verdicts.
 * Cost: O(count), one pass over a quiet record, six over others, one byte for each reading.
 * @example judgeReadings of 14.3, 85, 14.5 °C: codes that are not 0 // => 1
 */
export function* judgeReadings(input: ReadingsToJudge): Generator<void, ReadingsJudgement> {
  const { count, medium, probeDepthCm, rawZeroC, stepMs } = input;
  const code = new Uint8Array(count);
  const book = verdictBook();
  const resolutionC = resolutionOf(input);
  const limits = limitsAt(medium, probeDepthCm, resolutionC);
  const { look, seen } = quietLook(input);
  for (let from = 0; from < count; from += PIECE) {
    look(from, Math.min(count, from + PIECE));
    yield;
  }
  const isWithin = !seen.hasNaN && seen.lowestC >= limits.coldestC && seen.highestC <= limits.hottestC;
  const toleranceK = zeroToleranceK(rawZeroC);
  const hasZeros = seen.lowestC <= rawZeroC + toleranceK && seen.highestC >= rawZeroC - toleranceK;
  // A failed zero is entered or left by a jump. Dropped readings bring others side by side, of whose change nothing is
  // known yet.
  const mayHaveFailedZeros = hasZeros && (!isWithin || seen.largestChangeK > WELL_AWAY_K - toleranceK);
  const mayDrop = !isWithin || mayHaveFailedZeros || seen.largestChangeK > limits.spikeK;
  const mayHaveSteps = mayDrop || seen.largestHourK > limits.stepK;
  const mayBeStuck = mayDrop || seen.longestFlatMs + 2 * (HOUR_MS + longestJoinedMs(stepMs)) >= MIN_STUCK_MS;
  // Each in turn over the whole record: a test looks ahead only through what the ones before it have left.
  const tests = [
    ...(isWithin ? [] : [rangeTest(input, limits, book, code)]),
    ...(mayHaveFailedZeros ? [failedZeroTest(input, limits, rawZeroC, medium === 'air', book, code)] : []),
    ...(mayDrop ? [spikeTest(input, limits, book, code)] : []),
    ...(mayHaveSteps ? [stepTest(input, limits, book, code)] : []),
    ...(mayBeStuck ? [stuckTest(input, { medium, probeDepthCm }, stepMs, resolutionC, book, code)] : []),
  ];
  for (const test of tests) {
    for (let from = 0; from < count; from += PIECE) {
      test(from, Math.min(count, from + PIECE));
      yield;
    }
  }
  return { code, verdicts: book.verdicts };
}
