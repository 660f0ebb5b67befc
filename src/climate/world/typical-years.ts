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
/** Lag-1 correlation of the daily mean, and of the half range: means of 13 stations, which have 0.64 to 0.75, 0.34 to 0.64. */
const MEAN_LAG_1 = 0.71;
const RANGE_LAG_1 = 0.43;
/** Correlation of the two on a day, over the year's mean, and how much more at midsummer: bright days are warm in summer, cold in winter.
 * 13 stations have -0.4 to 0.7 in single months. */
const BRIGHT_IS_WARM = 0.11;
const BRIGHT_IS_WARM_IN_SUMMER = 0.16;
/** Standard deviation of the half range [K]: 1.31 + 0.067 s + 0.13 h - 0.025 m, by regression over the months of 13 stations; less where
 * the range itself is small. */
const RANGE_SD_K = 1.313;
const RANGE_SD_PER_SD = 0.067;
const RANGE_SD_PER_HALF_RANGE = 0.129;
const RANGE_SD_PER_C = -0.025;
const MAX_RANGE_SD_SHARE = 1 / 2.2;
const MIDSUMMER = 172;
const SOUTHERN_MIDSUMMER = 355;
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
 * Formula: m(t), h(t), s(t): three harmonics through the months of (max + min)/2, (max - min)/2 and the standard deviation, less
 * what the season's course within the month makes of it. a(t) = 0.71 a(t-1) + sqrt(1 - 0.71²) e, b(t) alike with 0.43 and f, e and f standard
 * normal and so correlated that a and b are by 0.11 + 0.16 cos(2π (day - midsummer)/366). Mean m + s a; half range h + r b, r = min(1.31
 * + 0.067 s + 0.13 h - 0.025 m, h/2.2). The later fifteen years have a and b of the earlier ones with the other sign, so that the
 * thirty have the climate's means.
 * Validity: at 13 stations of the U.S. Climate Reference Network, with their own means, the last and first frosts of half of the years came
 * 2 days early and 1 day late in the mean; with a half range as in winter all year and no correlation 7 and 3 days the other way. No trend,
 * no drought years, no rain.
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
  const monthMeanC = (month: number): number => (meanMaxC[month]! + meanMinC[month]!) / 2;
  const middleC = courseOf(meanMaxC, (_, month) => monthMeanC(month));
  const halfRangeK = courseOf(meanMaxC, (max, month) => (max - meanMinC[month]!) / 2);
  const spreadK = courseOf(sdK, (sd, month) =>
    aboutTheCourse(sd, monthMeanC((month + 11) % 12), monthMeanC((month + 1) % 12)),
  );
  const { ofMean, ofRange } = anomalies(latitude, lehmer(seedOfPlace(latitude, longitude)));
  let at = 0;
  for (let year = 0; year < TYPICAL_YEARS; year++) {
    const isLeap = daysBetween(newYear(firstYear + year), newYear(firstYear + year + 1)) === LEAP_YEAR_DAYS;
    for (let day = 0; day < LEAP_YEAR_DAYS; day++) {
      if (day === LEAP_DAY && !isLeap) continue;
      const drawn = year * LEAP_YEAR_DAYS + day;
      const h = halfRangeK[day]!;
      const sd = Math.max(LEAST_SD_K, spreadK[day]!);
      const meanC = middleC[day]! + sd * ofMean[drawn]!;
      const rangeSdK = Math.min(
        RANGE_SD_K + RANGE_SD_PER_SD * sd + RANGE_SD_PER_HALF_RANGE * h + RANGE_SD_PER_C * middleC[day]!,
        h * MAX_RANGE_SD_SHARE,
      );
      const halfK = Math.max(LEAST_HALF_RANGE_K, h + rangeSdK * ofRange[drawn]!);
      minC[at] = meanC - halfK;
      maxC[at] = meanC + halfK;
      at++;
    }
  }
  return { firstDate: newYear(firstYear), minC, maxC };
}

const newYear = (year: number): PlainDate => `${year}-01-01` as PlainDate;

/**
 * The spread of days about the year's course, where that about the month's mean is known: the season's rise or fall within the month is
 * taken out, which spreads its days evenly [K].
 */
function aboutTheCourse(sdK: number, beforeC: number, afterC: number): number {
  const changeK = (afterC - beforeC) / 2;
  return Math.sqrt(Math.max(0, sdK * sdK - (changeK * changeK) / 12));
}

/** A value for each day of a leap year, through months made from some others. Shape (366). */
function courseOf(months: ArrayLike<number>, monthOf: (value: number, month: number) => number): Float64Array {
  const course = monthCourse(Array.from(months, monthOf), WAVES, MIDDLES);
  return Float64Array.from({ length: LEAP_YEAR_DAYS }, (_, day) => harmonicAt(course, day + 0.5));
}

/**
 * Standard normal values of the mean and of the half range of all days, each correlated with the day before and with the other; those of
 * the later half of the years have the other sign.
 */
function anomalies(latitude: number, random: () => number): { ofMean: Float64Array; ofRange: Float64Array } {
  const half = (TYPICAL_YEARS * LEAP_YEAR_DAYS) / 2;
  const ofMean = new Float64Array(2 * half);
  const ofRange = new Float64Array(2 * half);
  const meanStep = Math.sqrt(1 - MEAN_LAG_1 ** 2);
  const rangeStep = Math.sqrt(1 - RANGE_LAG_1 ** 2);
  // The correlation of the days' sums for one of what is added each day.
  const kept = (meanStep * rangeStep) / (1 - MEAN_LAG_1 * RANGE_LAG_1);
  let a = probit(random());
  let b = probit(random());
  for (let day = 0; day < half; day++) {
    const correlation = brightIsWarm(day % LEAP_YEAR_DAYS, latitude) / kept;
    const e = probit(random());
    a = MEAN_LAG_1 * a + meanStep * e;
    b = RANGE_LAG_1 * b + rangeStep * (correlation * e + Math.sqrt(1 - correlation ** 2) * probit(random()));
    ofMean[day] = a;
    ofMean[half + day] = -a;
    ofRange[day] = b;
    ofRange[half + day] = -b;
  }
  return { ofMean, ofRange };
}

/** Correlation of the daily mean with the half range on a day of the year. */
function brightIsWarm(day: number, latitude: number): number {
  const sinceMidsummer = (2 * Math.PI * (day - (latitude < 0 ? SOUTHERN_MIDSUMMER : MIDSUMMER))) / LEAP_YEAR_DAYS;
  return BRIGHT_IS_WARM + BRIGHT_IS_WARM_IN_SUMMER * Math.cos(sinceMidsummer);
}
