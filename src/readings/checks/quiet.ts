import { HOUR_MS } from '../../basics/calendar.js';
import type { Judged } from './doubt-input.js';

/** Facts of a record that show which tests would find nothing, so that those are skipped. */
export interface Quiet {
  /** Some value is no number. */
  hasNaN: boolean;
  /** [°C]; the other way round before anything is looked at. */
  lowestC: number;
  highestC: number;
  /** The largest change from one reading to the next [K]. */
  largestChangeK: number;
  /** No two readings that are an hour or less apart, or that follow one another, differ by more [K]. */
  largestHourK: number;
  /** A run of one value is longer than this by two hours and two steps between readings at most [ms]. */
  longestFlatMs: number;
}

/** Values in runs of one value may differ by this once converted [K]: more than what the test of such runs allows. */
const FLAT_K = 1e-8;

/**
 * Looks through a record once, piece by piece, without a hole. It is cut into stretches that begin an hour or more after
 * one another: an hour lies in two of them that touch, so their lowest and highest values bound what happens in it.
 */
export function quietLook({ atMs, valueC }: Judged): { look(from: number, to: number): void; seen: Quiet } {
  const seen: Quiet = {
    hasNaN: false,
    lowestC: Infinity,
    highestC: -Infinity,
    largestChangeK: 0,
    largestHourK: 0,
    longestFlatMs: 0,
  };
  let stretch = { endMs: -Infinity, lowC: Infinity, highC: -Infinity };
  let before = stretch;
  let flatFromMs = NaN;

  /** Closes the stretch whose last reading is this one. */
  function endStretch(last: number): void {
    const { lowC, highC } = stretch;
    seen.lowestC = Math.min(seen.lowestC, lowC);
    seen.highestC = Math.max(seen.highestC, highC);
    const [bothLowC, bothHighC] = [Math.min(lowC, before.lowC), Math.max(highC, before.highC)];
    seen.largestHourK = Math.max(seen.largestHourK, bothHighC - bothLowC);
    if (!(highC - lowC <= FLAT_K)) flatFromMs = NaN;
    else if (!(bothHighC - bothLowC <= FLAT_K) || Number.isNaN(flatFromMs)) flatFromMs = stretch.endMs - HOUR_MS;
    seen.longestFlatMs = Math.max(seen.longestFlatMs, Number.isNaN(flatFromMs) ? 0 : atMs[last]! - flatFromMs);
  }

  return {
    seen,
    look(from, to) {
      for (let i = from; i < to; ) {
        if (!(atMs[i]! < stretch.endMs)) {
          before = stretch;
          stretch = { endMs: atMs[i]! + HOUR_MS, lowC: Infinity, highC: -Infinity };
        }
        i = lookThrough(atMs, valueC, i, to, stretch, seen);
        endStretch(i - 1);
      }
    },
  };
}

/** Looks at readings up to the end of their stretch, or up to `to`; returns where it stopped. */
function lookThrough(
  atMs: Float64Array,
  valueC: Float64Array | Float32Array,
  from: number,
  to: number,
  stretch: { readonly endMs: number; lowC: number; highC: number },
  seen: Quiet,
): number {
  const { endMs } = stretch;
  let { lowC, highC } = stretch;
  let { largestChangeK } = seen;
  let lastC = valueC[Math.max(0, from - 1)]!;
  let i = from;
  for (; i < to && atMs[i]! < endMs; i++) {
    const value = valueC[i]!;
    if (value < lowC) lowC = value;
    if (value > highC) highC = value;
    const changeK = Math.abs(value - lastC);
    if (changeK > largestChangeK) largestChangeK = changeK;
    else if (!(changeK >= 0)) seen.hasNaN = true;
    lastC = value;
  }
  stretch.lowC = lowC;
  stretch.highC = highC;
  seen.largestChangeK = largestChangeK;
  return i;
}
