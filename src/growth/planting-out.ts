import { addDays, type PlainDate } from '../basics/calendar.js';
import type { NightRule, PlantingOut } from '../germination/growth.js';
import { indexIn, type RecordYear, recordYears, yearDayOf } from './record-years.js';
import { seasonDay, YEAR_DAYS } from './season-day.js';
import { type DailyAir, isTooWet, type WorkableGround, workableGround } from './workable-ground.js';

/** The grade of a date for planting out of a tray. */
export type PlantingGrade = 'good' | 'fair' | 'poor';

/** The days of a place that decide planting out. */
export interface DaysOutdoors extends DailyAir {
  /** Daily means of the soil at about 5 cm, on the days of the air [°C]; null: the mean of the air stands for it. */
  readonly soilC: ArrayLike<number> | null;
}

/** Where plants are put out. */
export interface PlantingSite {
  /** North positive [°]; null: not known, and wet ground is not looked at. */
  readonly latitudeDeg: number | null;
  /** The time for working its ground, if it is known already. */
  readonly ground?: WorkableGround;
  /** A raised bed drains. */
  readonly drains?: boolean;
}

/** In so many of the years frost leaves the plants alone: the rest is the risk of a late one. */
const SURE = 0.8;
/** Fewer years say nothing of a late frost. */
const MIN_YEARS = 3;
/** A season with more nights missing on the way is void: another frost may have been overlooked. */
const MAX_MISSING = 3;
/** Nights are judged by their mean over so many from the date on [d]. */
const NIGHTS = 14;
/**
 * Bare, moist soil at 5 cm is so much warmer in spring than the mean of the air's extremes [K]: at seven stations of the U.S. Climate
 * Reference Network dates for tomato and pepper by the air so warmed lie within 9 days of those by the modelled bed, in the middle on
 * the same day; without it up to 14 days after them.
 */
const SOIL_ABOVE_AIR_K = 1;
/** The soil's course is that of weeks: so many days before and after a day [d]. */
const HALF_WEEK = 3;

/**
 * Grades each date for planting a crop out of its tray, by the nights and the soil of past years.
 *
 * A date is poor where, in more than a fifth of the years, a frost comes that the plants do not bear, where the mean of the nights from
 * it on is below the crop's fair one, the soil's weekly mean below its least, or the ground cannot be worked. It is good where the nights
 * reach the better mean too. Screen temperatures: a bed on a clear night may be several kelvin colder.
 *
 * @param needs      What the crop bears.
 * @param past       The record. Where no soil is told the mean of the air stands for it, 1 K warmer.
 * @param site       Of crops that need no warm soil it says when the ground can be worked.
 * @returns The grade of a date, of any year; null where fewer than three years tell of it: nothing is planted on what nobody knows.
 * @throws ScienceError never.
 *
 * Formula: of days d of the year, over years y: share of y without a minimum <= limit in [d, d + days) >= 0.8; mean of the minima
 * in [d, d + 14); mean of the soil in [d - 3, d + 3].
 * Source: the rules are those of several extension services, as `germination/growth.ts` names them; the share is our choice.
 * @example of tomato at 40.05° N, 88.37° W, over 2003 to 2023: the first good date of a year // => 7 May
 */
export function plantingOutGrades(
  needs: PlantingOut,
  past: DaysOutdoors,
  { latitudeDeg, ground: known, drains = false }: PlantingSite,
): (date: PlainDate) => PlantingGrade | null {
  const years = recordYears(past.firstDate, past.minC.length);
  const spared = sparedShares(needs, past.minC, years);
  const nights = needs.nights?.by === 'mean' ? nightMeans(past.minC, years) : null;
  const soil = needs.leastSoilC === null ? null : weeklyCourse(soilOf(past), years);
  const ground = soil === null && latitudeDeg !== null ? (known ?? workableGround(past, latitudeDeg)) : null;
  const isWorkable = (date: PlainDate): boolean =>
    ground === null || !isTooWet(ground, seasonDay(date, latitudeDeg!), drains);
  return (date) => {
    const day = yearDayOf(date);
    const share = spared[day]!;
    if (Number.isNaN(share)) return null;
    const isWarm = soil === null ? isWorkable(date) : soil[day]! >= needs.leastSoilC!;
    if (share < SURE || !isWarm) return 'poor';
    return nights === null ? 'good' : nightGrade(needs.nights, nights[day]!);
  };
}

function nightGrade(rule: NightRule | null, meanC: number): PlantingGrade {
  if (rule?.by !== 'mean') return 'good';
  return meanC >= rule.goodC ? 'good' : meanC >= rule.fairC ? 'fair' : 'poor';
}

/** The first date, from one on, that suits at least so well; null: none does for so many days. */
export function firstPlantingOut(
  gradeOf: (date: PlainDate) => PlantingGrade | null,
  from: PlainDate,
  least: 'good' | 'fair' = 'fair',
  days = YEAR_DAYS,
): PlainDate | null {
  for (let day = 0; day < days; day++) {
    const date = addDays(from, day);
    const grade = gradeOf(date);
    if (grade === 'good' || (grade === 'fair' && least === 'fair')) return date;
  }
  return null;
}

/** Share of years whose frosts and cold nights spare the plants, for each day of the year; NaN where too few are known. */
function sparedShares({ frost, nights }: PlantingOut, minC: ArrayLike<number>, years: readonly RecordYear[]) {
  const n = minC.length;
  const cold = nights?.by === 'count' ? nights : null;
  // Sums up to each day, and the next frost from it on.
  const missing = new Uint32Array(n + 1);
  const coldNights = new Uint32Array(n + 1);
  const nextFrost = new Float64Array(n + 1).fill(Infinity);
  for (let day = 0; day < n; day++) {
    missing[day + 1] = missing[day]! + Number(Number.isNaN(minC[day]!));
    coldNights[day + 1] = coldNights[day]! + Number(cold !== null && minC[day]! < cold.belowC);
  }
  for (let day = n - 1; day >= 0; day--) nextFrost[day] = minC[day]! <= frost.limitC ? day : nextFrost[day + 1]!;
  const reach = Math.max(frost.days, cold?.days ?? 0);
  return Float64Array.from({ length: YEAR_DAYS }, (_, yearDay) => {
    let [known, spared] = [0, 0];
    for (const year of years) {
      const at = indexIn(year, yearDay);
      if (at < 0 || at + reach > n || missing[at + reach]! - missing[at]! > MAX_MISSING) continue;
      known++;
      const isFrosty = nextFrost[at]! - at < frost.days;
      const isCold = cold !== null && coldNights[at + cold.days]! - coldNights[at]! > cold.mostNights;
      if (!isFrosty && !isCold) spared++;
    }
    return known < MIN_YEARS ? NaN : spared / known;
  });
}

/** Mean minimum of the nights from each day of the year on, over all years. */
function nightMeans(minC: ArrayLike<number>, years: readonly RecordYear[]): Float64Array {
  const course = courseOf(minC, years);
  return runningMeans(course, 0, NIGHTS);
}

/** Mean of the week around each day of the year, over all years. */
const weeklyCourse = (valueC: ArrayLike<number>, years: readonly RecordYear[]): Float64Array =>
  runningMeans(courseOf(valueC, years), -HALF_WEEK, 2 * HALF_WEEK + 1);

const soilOf = ({ soilC, minC, maxC }: DaysOutdoors): ArrayLike<number> =>
  soilC ?? Float64Array.from({ length: minC.length }, (_, day) => (minC[day]! + maxC[day]!) / 2 + SOIL_ABOVE_AIR_K);

/** Mean of each day of the year over the years that know it; NaN where none does. */
function courseOf(valueC: ArrayLike<number>, years: readonly RecordYear[]): Float64Array {
  return Float64Array.from({ length: YEAR_DAYS }, (_, yearDay) => {
    let [sum, known] = [0, 0];
    for (const year of years) {
      const value = valueC[indexIn(year, yearDay)] ?? NaN;
      if (Number.isNaN(value)) continue;
      sum += value;
      known++;
    }
    return sum / known;
  });
}

/** Means of so many days from an offset on, around the year, of those that are known. */
function runningMeans(course: Float64Array, offset: number, days: number): Float64Array {
  const n = course.length;
  return course.map((_, yearDay) => {
    let [sum, known] = [0, 0];
    for (let day = 0; day < days; day++) {
      const value = course[(yearDay + offset + day + n) % n]!;
      if (Number.isNaN(value)) continue;
      sum += value;
      known++;
    }
    return sum / known;
  });
}
