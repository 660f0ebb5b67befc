import { dayOfYear, type PlainDate } from '../basics/calendar.js';
import { dayUnits } from './day-units.js';
import { evaporationMm } from './evaporation.js';
import { seasonDayOf, YEAR_DAYS } from './season-day.js';

/** Air from a date on, day by day [°C]; NaN: not known. Shape (n) each. */
export interface DailyAir {
  readonly firstDate: PlainDate;
  readonly minC: Float64Array;
  readonly maxC: Float64Array;
}

/** Field work starts when so many degrees above 0 °C have come together [°C·d]: Barnett and others (2006), handbook of climate
 * trends across Scotland. */
const FIELD_WORK_CDAYS = 200;
/** Where no month is colder there is no winter that ground has to warm from [°C]. Our assumption: Koeppen's tropics begin at 18 °C, 15 takes
 * in their highlands. */
const WINTERLESS_C = 15;
const MONTH_DAYS = 30;
/** Ground dries when so much can evaporate a day [mm]: the least that seven stations have on their day of field work (tuned), so
 * that it delays only where winters are mild and dull. */
const DRYING_MM = 1.9;
/** As a mean of so many days around each. */
const DRYING_DAYS = 15;

/** Which days of the growing year find the ground fit to be worked. */
export interface WorkableGround {
  /** The first with enough warmth since midwinter, as the middle of the years; 0: there is no winter; NaN: no year is known. */
  readonly firstDay: number;
  /** Mean potential evaporation around each day of the year [mm/d]. Shape (365). */
  readonly evaporationMm: Float64Array;
}

/**
 * The time from which ground can be worked in spring, from past years.
 *
 * @param air         Of several years, coming days not among them.
 * @param latitudeDeg North positive [°].
 *
 * Formula: the middle of the years' first days with a sum of max(0, T) of 200 °C·d since midwinter, or the first of all where the
 * coldest 30 days of the mean year are at 15 °C or more; evaporation of the mean year's
 * extremes by `evaporationMm`, as means of 15 days.
 * @example workableGround of 22 years of air at Champaign, Illinois: its first day, 28 March // => 86
 */
export function workableGround({ firstDate, minC, maxC }: DailyAir, latitudeDeg: number): WorkableGround {
  const firsts: number[] = [];
  const sums = { min: new Float64Array(YEAR_DAYS), max: new Float64Array(YEAR_DAYS), n: new Float64Array(YEAR_DAYS) };
  const ofYear = new Float64Array(YEAR_DAYS);
  let [warmth, isReached] = [NaN, true];
  let year = Number(firstDate.slice(0, 4));
  let doy = dayOfYear(firstDate) - 1;
  for (let i = 0; i < minC.length; i++) {
    if (++doy > daysIn(year)) [year, doy] = [year + 1, 1];
    const day = seasonDayOf(doy, latitudeDeg);
    // The last day of a leap year is that of the day before.
    if (doy > YEAR_DAYS) continue;
    if (day === 0) [warmth, isReached] = [0, false];
    const meanC = (minC[i]! + maxC[i]!) / 2;
    if (!isReached) {
      warmth += dayUnits(meanC, 0, Infinity);
      if (warmth >= FIELD_WORK_CDAYS) {
        firsts.push(day);
        isReached = true;
      }
    }
    if (Number.isNaN(meanC)) continue;
    sums.min[day]! += minC[i]!;
    sums.max[day]! += maxC[i]!;
    sums.n[day]!++;
    ofYear[day] = doy;
  }
  const daily = ofYear.map((doy, day) =>
    evaporationMm(sums.min[day]! / sums.n[day]!, sums.max[day]! / sums.n[day]!, latitudeDeg, doy),
  );
  firsts.sort((a, b) => a - b);
  const meanC = ofYear.map((_, day) => (sums.min[day]! + sums.max[day]!) / (2 * sums.n[day]!));
  const isWinterless = Math.min(...aroundEach(meanC, MONTH_DAYS)) >= WINTERLESS_C;
  const firstDay = firsts[(firsts.length - 1) >> 1] ?? NaN;
  return { firstDay: isWinterless ? 0 : firstDay, evaporationMm: aroundEach(daily, DRYING_DAYS) };
}

const daysIn = (year: number): number => (year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 366 : 365);

/** Means of so many days around each day of a year; NaN is left out. */
function aroundEach(daily: Float64Array, days: number): Float64Array {
  const reach = Math.floor((days - 1) / 2);
  return daily.map((_, day) => {
    let [sum, n] = [0, 0];
    for (let i = day - reach; i <= day + reach; i++) {
      const value = daily[(i + YEAR_DAYS) % YEAR_DAYS]!;
      if (Number.isNaN(value)) continue;
      sum += value;
      n++;
    }
    return sum / n;
  });
}

/** Spring, in which wet ground closes dates, is the first half of the growing year [d]: before 1 July in the north. */
const SPRING_DAYS = 181;

/**
 * Is a date closed because the ground is still too cold and wet to be worked?
 *
 * @param day    Of the growing year, as `seasonDay` counts.
 * @param drains A raised bed drains, so evaporation says nothing of it: assumed.
 */
export const isTooWet = (
  { firstDay, evaporationMm: dryingMm }: WorkableGround,
  day: number,
  drains: boolean,
): boolean => day < SPRING_DAYS && (day < firstDay || (!drains && dryingMm[day]! < DRYING_MM));
