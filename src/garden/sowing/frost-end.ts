import type { PlainDate } from '../../basics/calendar.js';
import { type DailyMinima, frostDates } from '../../climate/frost-dates.js';
import type { FrostClass } from '../../germination/crop.js';
import { ENDS_C } from '../plan/starts-of-year.js';

/**
 * The day on which, in the middle of the past years, the first frost of autumn after a date ends a crop.
 *
 * @param minima      The air's daily minima of past years; null: not known.
 * @param frost       The crop's hardiness; null: not known.
 * @param latitudeDeg Latitude, north positive [°]; null: not known.
 * @returns That day, from a date on which the crop still grows; null where half of the years have no such frost, or too
 * little is known.
 * @example of tomato where the middle first frost is that of 7 November: from 2027-08-03 on // => 2027-11-07
 */
export function frostEnd(
  minima: DailyMinima | null,
  frost: FrostClass | null,
  latitudeDeg: number | null,
): (after: PlainDate) => PlainDate | null {
  const day =
    minima && frost && latitudeDeg !== null ? frostDates(minima, ENDS_C[frost], latitudeDeg).autumn.risk50 : null;
  return (after) => {
    if (day === null) return null;
    const year = Number(after.slice(0, 4));
    const inYear = `${year}-${day}` as PlainDate;
    return inYear > after ? inYear : (`${year + 1}-${day}` as PlainDate);
  };
}
