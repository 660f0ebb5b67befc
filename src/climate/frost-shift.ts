import { daysBetween, type PlainDate } from '../basics/calendar.js';
import { type DailyMinima, frostDates, type MonthDay, SPLIT } from './frost-dates.js';

/** The date, by a grower's own knowledge, of the last frost of spring or the first of autumn in half of the years. */
export interface KnownFrost {
  readonly side: 'spring' | 'autumn';
  readonly around: MonthDay;
}

/** A shift beyond this says that date or place is wrong [K]. */
export const MAX_SHIFT_K = 8;
const HALVINGS = 10;
const FROST_C = 0;
const AN_ORDINARY_YEAR = 2001;
const YEAR_DAYS = 365;

/**
 * The shift of all minima with which half of the years have their last or first frost by a date.
 *
 * @param minima      The record [°C]; NaN is a missing day.
 * @param latitudeDeg Latitude, north positive [°].
 * @param known       The date.
 * @returns The shift to add [K], to a hundredth; null where 8 K up or down are not enough.
 * @throws ScienceError never.
 *
 * Formula: bisection; the date of `frostDates` with a risk of 50 % moves one way as minima fall.
 * Source: our study of 13 stations: it makes their monthly minima err by less.
 */
export function frostShift(minima: DailyMinima, latitudeDeg: number, { side, around }: KnownFrost): number | null {
  const wanted = daysFromSummer(around, side, latitudeDeg);
  // Minima warmer by a shift freeze where they themselves are that far below 0 °C.
  const isTooWarm = (shiftK: number): boolean => {
    const { risk50 } = frostDates(minima, FROST_C - shiftK, latitudeDeg)[side];
    return risk50 === null || daysFromSummer(risk50, side, latitudeDeg) > wanted;
  };
  let [low, high] = [-MAX_SHIFT_K, MAX_SHIFT_K];
  if (isTooWarm(low) || !isTooWarm(high)) return null;
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2;
    if (isTooWarm(middle)) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/** Days between a date and the middle of the warm season, before it in spring and after it in autumn. */
function daysFromSummer(date: MonthDay, side: 'spring' | 'autumn', latitudeDeg: number): number {
  const split = latitudeDeg < 0 ? SPLIT.south : SPLIT.north;
  const ofOrdinaryYear = (day: MonthDay): PlainDate =>
    `${AN_ORDINARY_YEAR}-${day === '02-29' ? '02-28' : day}` as PlainDate;
  const after = daysBetween(ofOrdinaryYear(split), ofOrdinaryYear(date));
  return ((side === 'autumn' ? after : -after) + YEAR_DAYS) % YEAR_DAYS;
}
