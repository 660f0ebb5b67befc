import { addDays, dayOfYear, daysBetween, type PlainDate } from '../basics/calendar.js';
import { riskDay } from './risk-day.js';

/** Daily minima of the air over many years, one for every date: NaN for a missing day. */
export interface DailyMinima {
  readonly firstDate: PlainDate;
  /** [°C]. Shape (n), day by day from the first date on. */
  readonly minC: ArrayLike<number>;
}

/** A day of the year as `MM-DD`. */
export type MonthDay = string;

/** Days that leave a risk of 10, 50 and 90 %; null when the risk is never so high or too few seasons are known. */
export interface FrostSide {
  readonly risk10: MonthDay | null;
  readonly risk50: MonthDay | null;
  readonly risk90: MonthDay | null;
  /** Number of seasons with a known last or first frost, or known to have had none. */
  readonly seasons: number;
  readonly seasonsWithFrost: number;
}

export interface FrostDates {
  /** The last frost of spring: the risk of a frost after the day. */
  readonly spring: FrostSide;
  /** The first frost of autumn: the risk of a frost before the day. */
  readonly autumn: FrostSide;
}

/**
 * The middle of the warm season, from which the search for frosts goes backward into spring and forward into autumn.
 */
export const SPLIT = { north: '07-24', south: '01-24' } as const;
const SEASON_DAYS = 365;
/** Missing days between the split and a frost that make a season void, because they may hide another frost. */
const MISSING_VOIDS = 10;
const ORDINARY_YEAR = 2001;

/**
 * Dates of the last frost of spring and the first of autumn at a place.
 *
 * The search walks the days from each split, backward for spring and forward for autumn, to the first frost, at
 * most a year. Ten missing days on that way make the season void; days before and after the record count as missing.
 *
 * @param minima      The record; screen temperatures: a bed on a clear night may be several kelvin colder.
 * @param thresholdC  A day with this minimum or a lower one has a frost [°C]; 0, or for a hard one -2.2.
 * @param latitudeDeg Latitude, north positive [°].
 * @returns For spring and autumn, days of the year at three risks, and the number of seasons used.
 * @throws ScienceError never.
 *
 * Formula: days of an ordinary year from `riskDay`, rounded to whole ones.
 * Source: Moller, Gillies (2007). Utah Climate, 2nd edition, p. 55: the splits and the ten missing days; `riskDay`.
 * @example frostDates of 11 springs whose last frosts came on days 121 to 147 of the year // => risk50 on day 134
 */
export function frostDates(minima: DailyMinima, thresholdC: number, latitudeDeg: number): FrostDates {
  const { firstDate, minC } = minima;
  const split = latitudeDeg < 0 ? SPLIT.south : SPLIT.north;
  const lastDate = addDays(firstDate, minC.length - 1);
  const spring: number[] = [];
  const autumn: number[] = [];
  let springs = 0;
  let autumns = 0;
  for (let year = yearOf(firstDate); year <= yearOf(lastDate) + 1; year++) {
    const at = daysBetween(firstDate, `${year}-${split}` as PlainDate);
    const last = firstFrost(minC, thresholdC, at - 1, -1);
    const first = firstFrost(minC, thresholdC, at, 1);
    if (last !== null) springs++;
    if (first !== null) autumns++;
    if (typeof last === 'number') spring.push(ordinaryDay(addDays(firstDate, last), year));
    if (typeof first === 'number') autumn.push(ordinaryDay(addDays(firstDate, first), year));
  }
  return { spring: sideOf(spring, springs, 'spring'), autumn: sideOf(autumn, autumns, 'autumn') };
}

/** Index of the first frost from a day on; 'none' for a year without one; null when too many days are missing. */
function firstFrost(minC: ArrayLike<number>, thresholdC: number, from: number, step: 1 | -1): number | 'none' | null {
  let missing = 0;
  for (let days = 0; days < SEASON_DAYS; days++) {
    const tempC = minC[from + step * days] ?? NaN;
    if (tempC <= thresholdC) return from + step * days;
    if (Number.isNaN(tempC) && ++missing === MISSING_VOIDS) return null;
  }
  return 'none';
}

function sideOf(days: number[], seasons: number, side: 'spring' | 'autumn'): FrostSide {
  days.sort((a, b) => a - b);
  const at = (risk: number): MonthDay | null => {
    const day = riskDay(days, seasons, risk, side);
    return day === null ? null : monthDayOf(day);
  };
  return { risk10: at(0.1), risk50: at(0.5), risk90: at(0.9), seasons, seasonsWithFrost: days.length };
}

/**
 * A date's day as if all years were ordinary ones, so that a date has one number in all years; 1 is 1 January of
 * `year`.
 */
function ordinaryDay(date: PlainDate, year: number): number {
  return dayOfYear(`${ORDINARY_YEAR}${date.slice(4)}` as PlainDate) + 365 * (yearOf(date) - year);
}

const monthDayOf = (day: number): MonthDay =>
  addDays(`${ORDINARY_YEAR}-01-01` as PlainDate, Math.round(day) - 1).slice(5);

const yearOf = (date: PlainDate): number => Number(date.slice(0, 4));
