import { daysBetween, type PlainDate } from '../basics/calendar.js';
import { YEAR_DAYS } from './season-day.js';

/** A year that a record touches. */
export interface RecordYear {
  /** Index of its 1 January; may lie before the record. */
  readonly startsAt: number;
  readonly isLeap: boolean;
}

const FEBRUARY_29 = 59;

/** The years that a record of n days touches. */
export function recordYears(firstDate: PlainDate, n: number): RecordYear[] {
  const years: RecordYear[] = [];
  for (let year = Number(firstDate.slice(0, 4)); ; year++) {
    const startsAt = daysBetween(firstDate, `${year}-01-01` as PlainDate);
    if (startsAt >= n) return years;
    const next = daysBetween(firstDate, `${year + 1}-01-01` as PlainDate);
    years.push({ startsAt, isLeap: next - startsAt > YEAR_DAYS });
  }
}

/** The index in a record of a day of an ordinary year, 1 January being 0, in one of its years: 29 February is none. */
export const indexIn = ({ startsAt, isLeap }: RecordYear, yearDay: number): number =>
  startsAt + yearDay + (isLeap && yearDay >= FEBRUARY_29 ? 1 : 0);

/** The day of an ordinary year that a date is, 1 January being 0; 29 February is taken as the day before. */
export function yearDayOf(date: PlainDate): number {
  const monthDay = date.slice(5) === '02-29' ? '02-28' : date.slice(5);
  return daysBetween('2001-01-01' as PlainDate, `2001-${monthDay}` as PlainDate);
}
