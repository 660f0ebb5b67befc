import { addDays, dateAt, HOUR_MS, type PlainDate, startOfDay, type Zone } from '../../basics/calendar.js';
import type { Readings } from '../readings.js';
import { meansWithin } from './means-within.js';

/** A day is complete with at least this share of it covered: 18 of 24 hours, as for climate stations. */
const COMPLETE_SHARE = 18 / 24;

/** One day's temperatures at the place; null where the day's readings do not say. */
export interface Day {
  readonly date: PlainDate;
  readonly min: number | null;
  readonly mean: number | null;
  readonly max: number | null;
  /** Number of readings behind it. */
  readonly readings: number;
  readonly complete: boolean;
}

/** Days, and the mean over all the time that their readings cover [°C]; null where they cover none. */
export interface FoldedDays {
  readonly days: readonly Day[];
  readonly meanC: number | null;
}

/** The minimum, mean and maximum of every day that has readings, in the place's own calendar. */
export function daysOf(readings: Readings, zone: Zone, longestJoinedMs: number): FoldedDays {
  const { days, sumC, coveredMs } = fold(readings, zone, longestJoinedMs);
  return { days, meanC: meanOf(sumC, coveredMs) };
}

const SLICE = 50_000;

/** The same of very many readings, yielding now and then so that a server can answer others. */
export function* daysInSlices(readings: Readings, zone: Zone, longestJoinedMs: number): Generator<void, FoldedDays> {
  const { atMs } = readings;
  const all: Day[] = [];
  let [sum, covered] = [0, 0];
  for (let from = 0; from < atMs.length; ) {
    let to = Math.min(atMs.length, from + SLICE);
    const end = to === atMs.length ? Infinity : startOfDay(addDays(dateAt(atMs[to - 1]!, zone), 1), zone);
    while (to < atMs.length && atMs[to]! < end) to++;
    // The lines to the readings before and after belong in part to the slice's own days.
    const [before, after] = [Math.max(0, from - 1), Math.min(atMs.length, to + 1)];
    const part = {
      atMs: atMs.subarray(before, after),
      valueC: readings.valueC.subarray(before, after),
      basis: readings.basis.subarray(before, after),
    };
    const { days, sumC, coveredMs } = fold(part, zone, longestJoinedMs);
    const last = days.length - (after > to ? 1 : 0);
    for (let day = from > before ? 1 : 0; day < last; day++) {
      all.push(days[day]!);
      sum += sumC[day]!;
      covered += coveredMs[day]!;
    }
    from = to;
    yield;
  }
  return { days: all, meanC: covered > 0 ? sum / covered : null };
}

function meanOf(sumC: Float64Array, coveredMs: Float64Array): number | null {
  const covered = coveredMs.reduce((total, ms) => total + ms, 0);
  return covered > 0 ? sumC.reduce((total, part) => total + part, 0) / covered : null;
}

/** Each day, its mean times the time covered [°C ms], and that time [ms]. */
function fold(
  readings: Readings,
  zone: Zone,
  longestJoinedMs: number,
): { days: Day[]; sumC: Float64Array; coveredMs: Float64Array } {
  const { atMs, valueC } = readings;
  const dates: PlainDate[] = [];
  const [starts, ends, lows, highs, counts]: [number[], number[], number[], number[], number[]] = [[], [], [], [], []];
  for (let i = 0; i < atMs.length; ) {
    const date = dateAt(atMs[i]!, zone);
    const end = startOfDay(addDays(date, 1), zone);
    const first = i;
    let [low, high] = [Infinity, -Infinity];
    for (; i < atMs.length && atMs[i]! < end; i++) {
      const tempC = valueC[i]!;
      if (tempC < low) low = tempC;
      if (tempC > high) high = tempC;
    }
    dates.push(date);
    starts.push(startOfDay(date, zone));
    ends.push(end);
    lows.push(low);
    highs.push(high);
    counts.push(i - first);
  }
  const { meanC, coveredMs } = meansWithin(
    readings,
    Float64Array.from(starts),
    Float64Array.from(ends),
    longestJoinedMs,
  );
  const days = dates.map((date, day) => ({
    date,
    min: lows[day]!,
    // With few readings the line across midnight can run beyond the day's own extremes.
    mean: Number.isNaN(meanC[day]) ? null : Math.min(highs[day]!, Math.max(lows[day]!, meanC[day]!)),
    max: highs[day]!,
    readings: counts[day]!,
    complete: coveredMs[day]! >= COMPLETE_SHARE * (ends[day]! - starts[day]!) - HOUR_MS / 1000,
  }));
  return { days, sumC: meanC.map((mean, day) => (coveredMs[day]! > 0 ? mean * coveredMs[day]! : 0)), coveredMs };
}
