import { DAY_MS } from '../../basics/calendar.js';

/** Readings further apart than this are of two times of the logger's life [ms]: half a year. */
const APART_MS = 183 * DAY_MS;
/** Rows of a lost clock are less than this share of the record. */
const MAX_SHARE = 0.3;
/** Clocks that have lost the date begin again on New Year's Day, of 2000 as a rule. */
const NEAR_NEW_YEAR_MS = 1.5 * DAY_MS;

/**
 * How many readings at the start of a record were written by a clock that had lost its date: a small part of all, half
 * a year or more before the rest, that begins on a New Year's Day.
 *
 * @param atMs Instants, rising [ms]. Shape (n).
 * @example lostClockRows of ten hours from 2000-01-01T00:00Z on, then a month of 2027 // => 10
 */
export function lostClockRows(atMs: Float64Array): number {
  const most = Math.floor(MAX_SHARE * atMs.length);
  let split = 0;
  for (let i = 1; i <= most; i++) if (atMs[i]! - atMs[i - 1]! > APART_MS) split = i;
  if (split === 0) return 0;
  const newYearMs = Date.UTC(new Date(atMs[0]! + NEAR_NEW_YEAR_MS).getUTCFullYear(), 0, 1);
  return Math.abs(atMs[0]! - newYearMs) <= NEAR_NEW_YEAR_MS ? split : 0;
}
