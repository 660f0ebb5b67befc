import { dayOfYear, type PlainDate } from '../basics/calendar.js';

/** South of the equator the year is turned by half [d]. */
const HALF_YEAR_DAYS = 182;
export const YEAR_DAYS = 365;

/**
 * Which day of its growing year a date is: days since 1 January, south of the equator since 2 July.
 *
 * @param latitudeDeg North positive [°].
 * @returns 0 to 364; the last day of a leap year is 364 too.
 * @example seasonDay('2027-01-01', 40) // => 0
 */
export const seasonDay = (date: PlainDate, latitudeDeg: number): number => seasonDayOf(dayOfYear(date), latitudeDeg);

/** The same of a day of the year, 1 January being 1. */
export function seasonDayOf(ofYear: number, latitudeDeg: number): number {
  const day = Math.min(YEAR_DAYS, ofYear) - 1;
  return latitudeDeg < 0 ? (day + YEAR_DAYS - HALF_YEAR_DAYS) % YEAR_DAYS : day;
}
