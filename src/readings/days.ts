import { addDays, dateAt, HOUR_MS, type PlainDate, startOfDay, type Zone } from '../basics/calendar.js';
import { meansWithin } from './means-within.js';
import type { Readings } from './readings.js';

/** A day is complete with at least this share of it covered: 18 of 24 hours, as for climate stations. */
const COMPLETE_SHARE = 18 / 24;

/** One day's temperatures at the place; null where the day's readings do not say. */
export interface Day {
  readonly date: PlainDate;
  readonly min: number | null;
  readonly mean: number | null;
  readonly max: number | null;
  /** How many readings it rests on. */
  readonly readings: number;
  readonly complete: boolean;
}

/** The minimum, mean and maximum of every day that has readings, in the place's own calendar. */
export function daysOf(readings: Readings, zone: Zone, longestJoinedMs: number): Day[] {
  const { atMs, valueC } = readings;
  const dates: PlainDate[] = [];
  const starts: number[] = [];
  const ends: number[] = [];
  const lows: number[] = [];
  const highs: number[] = [];
  const counts: number[] = [];
  for (let i = 0; i < atMs.length; i++) {
    if (dates.length === 0 || atMs[i]! >= ends.at(-1)!) {
      const date = dateAt(atMs[i]!, zone);
      dates.push(date);
      starts.push(startOfDay(date, zone));
      ends.push(startOfDay(addDays(date, 1), zone));
      lows.push(Infinity);
      highs.push(-Infinity);
      counts.push(0);
    }
    const day = dates.length - 1;
    lows[day] = Math.min(lows[day]!, valueC[i]!);
    highs[day] = Math.max(highs[day]!, valueC[i]!);
    counts[day]!++;
  }
  const { meanC, coveredMs } = meansWithin(
    readings,
    Float64Array.from(starts),
    Float64Array.from(ends),
    longestJoinedMs,
  );
  return dates.map((date, day) => ({
    date,
    min: lows[day]!,
    // With few readings the line across midnight can run beyond the day's own extremes.
    mean: Number.isNaN(meanC[day]) ? null : Math.min(highs[day]!, Math.max(lows[day]!, meanC[day]!)),
    max: highs[day]!,
    readings: counts[day]!,
    complete: coveredMs[day]! >= COMPLETE_SHARE * (ends[day]! - starts[day]!) - HOUR_MS / 1000,
  }));
}
