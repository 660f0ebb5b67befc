import { FIRST_YEAR, LAST_YEAR } from '../../basics/calendar.js';
import type { Scan } from './scan/scan.js';

/** Order of the numbers of a scanned date. */
export type DateStyle = 'year-first' | 'year-last' | 'year-unknown' | 'month-name' | 'compact' | 'ordinal';

/** Two-digit years from here on are 19.., those below 20.. */
const CENTURY_TURN = 70;
const DAYS_BEFORE = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365];

export const isLeapYear = (year: number): boolean => year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);

/** A year in full: 1970 to 2069 for two digits. */
export const fullYear = (year: number): number =>
  year >= 100 ? year : year >= CENTURY_TURN ? 1900 + year : 2000 + year;

/** Place of the year among three scanned numbers; null if they are no date. */
function styleOfNumbers({ digits1, digits2, digits3 }: Scan): DateStyle | null {
  if (digits2 > 2) return null;
  if (digits1 === 4) return digits3 <= 2 ? 'year-first' : null;
  if (digits1 > 2) return null;
  if (digits3 === 4) return 'year-last';
  return digits3 <= 2 && (digits1 === 2 || digits3 === 2) ? 'year-unknown' : null;
}

/**
 * The date of a scanned stamp as p1 * 10,000 + p2 * 100 + p3: the three parts as written, but a year of four digits first.
 * Where the order is known they are year, month, day. NaN where no order of them makes a date.
 */
export function dateCode(scan: Scan, style: DateStyle): number {
  const { d1, d2, d3 } = scan;
  switch (style) {
    case 'compact':
      return isYear(d1) && isDayAndMonth(d3, d2) ? d1 * 10_000 + d2 * 100 + d3 : NaN;
    case 'ordinal':
      return codeOfDay(d1, d2);
    case 'month-name':
      return codeOfNamed(scan);
    case 'year-first':
      if (styleOfNumbers(scan) !== style || !isYear(d1) || !isDayAndMonthInAnyOrder(d2, d3)) return NaN;
      return d1 * 10_000 + d2 * 100 + d3;
    case 'year-last':
      if (styleOfNumbers(scan) !== style || !isYear(d3) || !isDayAndMonthInAnyOrder(d1, d2)) return NaN;
      return d3 * 10_000 + d1 * 100 + d2;
    case 'year-unknown':
      if (styleOfNumbers(scan) !== style || !(isDayAndMonthInAnyOrder(d1, d2) || isDayAndMonth(d3, d2))) return NaN;
      return d1 * 10_000 + d2 * 100 + d3;
  }
}

const isYear = (year: number): boolean => year >= FIRST_YEAR && year <= LAST_YEAR;
const isDayAndMonth = (day: number, month: number): boolean => month >= 1 && month <= 12 && day >= 1 && day <= 31;
const isDayAndMonthInAnyOrder = (a: number, b: number): boolean => isDayAndMonth(a, b) || isDayAndMonth(b, a);

function codeOfNamed({ d1, d2, digits1, digits2, month }: Scan): number {
  const isYearFirst = digits1 === 4 || (digits2 <= 2 && d1 > 31);
  const [year, day, yearDigits, dayDigits] = isYearFirst ? [d1, d2, digits1, digits2] : [d2, d1, digits2, digits1];
  if (dayDigits > 2 || day < 1 || day > 31 || (yearDigits !== 4 && yearDigits !== 2)) return NaN;
  const full = yearDigits === 4 ? year : fullYear(year);
  return isYear(full) ? full * 10_000 + month * 100 + day : NaN;
}

function codeOfDay(year: number, dayOfYear: number): number {
  if (!isYear(year) || dayOfYear < 1 || dayOfYear > 366) return NaN;
  const leapDays = isLeapYear(year) ? 1 : 0;
  if (dayOfYear > 365 + leapDays) return NaN;
  let month = 12;
  const before = (m: number): number => DAYS_BEFORE[m - 1]! + (m > 2 ? leapDays : 0);
  while (before(month) >= dayOfYear) month--;
  return year * 10_000 + month * 100 + dayOfYear - before(month);
}
