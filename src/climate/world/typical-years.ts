import { daysBetween, type PlainDate } from '../../basics/calendar.js';
import { harmonicAt } from '../../basics/numerics/harmonic-fit.js';
import { probit } from '../../basics/numerics/probit.js';
import { monthCourse } from '../month-course.js';
import { lehmer, seedOfPlace } from './lehmer.js';

/** Daily extremes from a date on [°C]. Shape (n) each. */
export interface DailyExtremes {
  readonly firstDate: PlainDate;
  readonly minC: Float64Array;
  readonly maxC: Float64Array;
}

/** What typical years are made from, January first. Shape (12) each. */
export interface TypicalMonths {
  readonly meanMaxC: ArrayLike<number>;
  readonly meanMinC: ArrayLike<number>;
  readonly sdK: ArrayLike<number>;
}

export const TYPICAL_YEARS = 30;
const WAVES = 3;
/** Lag-1 correlation of the daily mean, and of the half range, means of 13 stations: they have 0.64 to 0.75, 0.34 to 0.64. */
const MEAN_LAG_1 = 0.71;
const RANGE_LAG_1 = 0.43;
/** Standard deviation of the half range [K]: 1.6 to 2.5 at those stations; less where the range itself is small. */
const RANGE_SD_K = 2.15;
const RANGE_SD_SHARE = 1 / 2.2;
const LEAST_SD_K = 0.8;
const LEAST_HALF_RANGE_K = 0.5;
/** Leap days are made in each year, and left out of the ordinary ones: a date has the same weather in the nth year whatever its number. */
const LEAP_YEAR_DAYS = 366;
const LEAP_DAY = 59;
/** Middles of the calendar's months; twelve of one length would be 1.6 days late in March [d]. */
const MIDDLES = [15.5, 45.25, 75, 105.5, 136, 166.5, 197, 228, 258.5, 289, 319.5, 350];

/**
 * Thirty years of days as a place's climate may bring them: always the same ones for the same place and climate.
 *
 * @param months    The climate.
 * @param latitude  Of the place, north positive [°].
 * @param longitude East positive [°].
 * @param lastYear  The last of the thirty calendar years.
 * @returns Every day from 1 January of the first year to 31 December of the last.
 * @throws ScienceError never, for finite months.
 *
 * Formula: m(t), h(t), s(t): three harmonics through the months of (max + min)/2, (max - min)/2 and the standard deviation. a(t) =
 * 0.71 a(t-1) + sqrt(1 - 0.71²) e, b(t) alike with 0.43, e standard normal. Mean m + s a; half range h + min(2.15, h/2.2) b. The later
 * fifteen years have a and b of the earlier ones with the other sign, so that the thirty have the climate's means.
 * Validity: at 13 stations of the U.S. Climate Reference Network such days have the monthly means' spread within 6 %. No trend, no drought
 * years, no rain.
 * Source: Richardson (1981). Stochastic simulation of daily precipitation, temperature, and solar radiation. Water
 * Resour. Res. 17: 182-190.
 */
export function typicalYears(
  { meanMaxC, meanMinC, sdK }: TypicalMonths,
  latitude: number,
  longitude: number,
  lastYear: number,
): DailyExtremes {
  const firstYear = lastYear - TYPICAL_YEARS + 1;
  const nDays = daysBetween(newYear(firstYear), newYear(lastYear + 1));
  const minC = new Float64Array(nDays);
  const maxC = new Float64Array(nDays);
  const middleC = courseOf(meanMaxC, (max, month) => (max + meanMinC[month]!) / 2);
  const halfRangeK = courseOf(meanMaxC, (max, month) => (max - meanMinC[month]!) / 2);
  const spreadK = courseOf(sdK, (sd) => sd);
  const random = lehmer(seedOfPlace(latitude, longitude));
  const ofMean = anomalies(MEAN_LAG_1, random);
  const ofRange = anomalies(RANGE_LAG_1, random);
  let at = 0;
  for (let year = 0; year < TYPICAL_YEARS; year++) {
    const isLeap = daysBetween(newYear(firstYear + year), newYear(firstYear + year + 1)) === LEAP_YEAR_DAYS;
    for (let day = 0; day < LEAP_YEAR_DAYS; day++) {
      if (day === LEAP_DAY && !isLeap) continue;
      const drawn = year * LEAP_YEAR_DAYS + day;
      const meanC = middleC[day]! + Math.max(LEAST_SD_K, spreadK[day]!) * ofMean[drawn]!;
      const rangeSdK = Math.min(RANGE_SD_K, halfRangeK[day]! * RANGE_SD_SHARE);
      const halfK = Math.max(LEAST_HALF_RANGE_K, halfRangeK[day]! + rangeSdK * ofRange[drawn]!);
      minC[at] = meanC - halfK;
      maxC[at] = meanC + halfK;
      at++;
    }
  }
  return { firstDate: newYear(firstYear), minC, maxC };
}

const newYear = (year: number): PlainDate => `${year}-01-01` as PlainDate;

/** A value for each day of a leap year, through months made from some others. Shape (366). */
function courseOf(months: ArrayLike<number>, monthOf: (value: number, month: number) => number): Float64Array {
  const course = monthCourse(Array.from(months, monthOf), WAVES, MIDDLES);
  return Float64Array.from({ length: LEAP_YEAR_DAYS }, (_, day) => harmonicAt(course, day + 0.5));
}

/** Standard normal values of all days, each correlated with the one before; those of the later half with the other sign. */
function anomalies(lag1: number, random: () => number): Float64Array {
  const half = (TYPICAL_YEARS * LEAP_YEAR_DAYS) / 2;
  const values = new Float64Array(2 * half);
  const innovation = Math.sqrt(1 - lag1 * lag1);
  let value = probit(random());
  for (let day = 0; day < half; day++) {
    value = lag1 * value + innovation * probit(random());
    values[day] = value;
    values[half + day] = -value;
  }
  return values;
}
