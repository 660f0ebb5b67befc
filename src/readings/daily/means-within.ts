import type { Readings } from '../readings.js';

/** Means over intervals, and how much of each interval the readings cover [ms]. */
export interface IntervalMeans {
  readonly meanC: Float64Array;
  readonly coveredMs: Float64Array;
}

/**
 * Mean temperature within each of a row of intervals, by the trapezoid rule over straight lines between readings.
 *
 * @param readings In time order.
 * @param startsMs Interval starts, rising; interval i ends at endsMs[i], not after the next start. Shape (n).
 * @param endsMs   Interval ends. Shape (n).
 * @param longestJoinedMs Readings further apart than this are not joined: between them nothing is covered.
 * @returns Means [°C], NaN where nothing is covered, and the covered time [ms]. Shape (n).
 *
 * Cost: O(readings + intervals), two pointers that only move forward.
 * @example meansWithin of 10 °C at 0 h and 20 °C at 1 h, over the hour // => 15
 */
export function meansWithin(
  readings: Readings,
  startsMs: Float64Array,
  endsMs: Float64Array,
  longestJoinedMs: number,
): IntervalMeans {
  const { atMs, valueC } = readings;
  /** First sums, then means. */
  const meanC = new Float64Array(startsMs.length);
  const coveredMs = new Float64Array(startsMs.length);
  let first = 0;
  for (let k = 1; k < atMs.length; k++) {
    const left = atMs[k - 1]!;
    const right = atMs[k]!;
    if (right - left > longestJoinedMs) continue;
    while (first < endsMs.length && endsMs[first]! <= left) first++;
    if (first === endsMs.length) break;
    if (left >= startsMs[first]! && right <= endsMs[first]!) {
      // Nearly all lines lie within one interval, and so do those that follow: a sum is enough.
      k = addLines(readings, k, endsMs[first]!, longestJoinedMs, first, meanC, coveredMs) - 1;
      continue;
    }
    const slope = (valueC[k]! - valueC[k - 1]!) / (right - left);
    for (let i = first; i < startsMs.length && startsMs[i]! < right; i++) {
      const from = Math.max(left, startsMs[i]!);
      const to = Math.min(right, endsMs[i]!);
      meanC[i]! += (valueC[k - 1]! + slope * ((from + to) / 2 - left)) * (to - from);
      coveredMs[i]! += to - from;
    }
  }
  for (let i = 0; i < meanC.length; i++) meanC[i] = coveredMs[i]! > 0 ? meanC[i]! / coveredMs[i]! : NaN;
  return { meanC, coveredMs };
}

/** Adds up the lines that lead to readings from this one on and end within an interval; returns the first that does not. */
function addLines(
  { atMs, valueC }: Readings,
  from: number,
  endMs: number,
  longestJoinedMs: number,
  interval: number,
  sums: Float64Array,
  coveredMs: Float64Array,
): number {
  let sum = 0;
  let covered = 0;
  let k = from;
  for (; k < atMs.length && atMs[k]! <= endMs; k++) {
    const lengthMs = atMs[k]! - atMs[k - 1]!;
    if (lengthMs > longestJoinedMs) continue;
    sum += 0.5 * (valueC[k - 1]! + valueC[k]!) * lengthMs;
    covered += lengthMs;
  }
  sums[interval]! += sum;
  coveredMs[interval]! += covered;
  return k;
}
