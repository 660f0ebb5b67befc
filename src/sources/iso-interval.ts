import { DAY_MS, findStamp, HOUR_MS } from '../basics/calendar.js';

/** A half-open interval of instants [ms]. */
export interface Interval {
  readonly fromMs: number;
  readonly toMs: number;
}

const DURATION = /^P(?=.*\d)(?:(\d{1,4})W)?(?:(\d{1,4})D)?(?:T(?=\d)(?:(\d{1,5})H)?(?:(\d{1,6})M)?(?:(\d{1,8})S)?)?$/;

/** Length of an ISO 8601 duration [ms]; undefined for other text, and for months or years, which vary. */
export function durationMs(text: string): number | undefined {
  const match = DURATION.exec(text);
  if (!match) return undefined;
  const [weeks, days, hours, minutes, seconds] = match.slice(1).map((digits) => Number(digits ?? 0));
  return (7 * weeks! + days!) * DAY_MS + hours! * HOUR_MS + minutes! * 60_000 + seconds! * 1000;
}

/**
 * Parses an ISO 8601 interval: start and duration, duration and end, or start and end, with a solidus between. Its
 * instants carry offsets from UTC.
 *
 * @returns undefined for other text.
 * @example
 * intervalOf('2027-08-03T14:00:00+00:00/PT3H') // from 14:00 up to 17:00 UTC
 */
export function intervalOf(text: string): Interval | undefined {
  const parts = text.split('/');
  if (parts.length !== 2) return undefined;
  const [first, second] = parts as [string, string];
  const [start, end] = [findStamp(first)?.ms, findStamp(second)?.ms];
  const [before, after] = [durationMs(first), durationMs(second)];
  const fromMs = start ?? (before !== undefined && end !== undefined ? end - before : undefined);
  const toMs = end ?? (after !== undefined && start !== undefined ? start + after : undefined);
  return fromMs !== undefined && toMs !== undefined && toMs >= fromMs ? { fromMs, toMs } : undefined;
}
