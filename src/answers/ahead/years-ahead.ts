import { addDays, DAY_MS, dateAt, HOUR_MS, startOfDay } from '../../basics/calendar.js';
import { fadingAnomaly } from '../../climate/fading-anomaly.js';
import { climatologicalOn } from '../../climate/year-course.js';
import type { Site } from '../soil/known-hours.js';
import { type PastSoil, yearsBefore } from './past-soil.js';

/** Ensemble of the soil at the seed after the last measured hour: each past year, shifted to today's soil. */
export interface YearsAhead {
  /** Number of different years. */
  readonly years: number;
  /** One usual year, made from normals, stands for all of them. */
  readonly isUsual: boolean;
  /** Hourly means of each member from the last measured hour on [°C]; NaN where its year is not known so far. */
  members(nHours: number): readonly Float64Array[];
  /** The mean of the members, hour by hour: an hour of a usual year from here on. */
  usual(nHours: number): Float64Array;
}

/** The known hours: the end of the last measured one, those before it, and those of the forecast days. */
export interface Now {
  readonly lastMs: number;
  /** Hourly means up to the last measured hour [°C]. Shape (n), n >= 24. */
  readonly knownC: Float64Array;
  /** Soil in the forecast days [°C]. Shape (m). */
  readonly comingC: Float64Array;
}

/** Lag-1 autocorrelation of the daily anomaly at 5 cm; e-folding time 8 days, as fitted at 13 stations
 * of the U.S. Climate Reference Network (flat from 6 to 12 days). */
export const SOIL_LAG_1 = Math.exp(-1 / 8);
/** A year is also taken so many days early or late, moved by the season: few years then tell nearly as much as many [d]. */
const STARTS = [0, -7, 7, -14, 14];
/** Weight of each day of a forecast beside past years; 0 beyond. Measured in our own study. */
const COMING_WEIGHT = [1, 1, 0.95, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3];

/** Weight of an hour of the forecast days, 0 to 1. */
export const comingWeight = (hour: number): number => COMING_WEIGHT[Math.floor(hour / 24)] ?? 0;

/** The remaining share of an anomaly some hours after the middle of the day that showed it. */
export const anomalyLeft = (hour: number): number => fadingAnomaly(1, 0, SOIL_LAG_1, (hour + 12) / 24).meanK;

/** The mean of the 24 hours before an hour of a record [°C]; NaN where they are not all known. */
export function dayBefore(hourlyC: Float64Array, hour: number): number {
  let sum = hour < 24 || hour > hourlyC.length ? NaN : 0;
  for (let h = hour - 24; h < hour; h++) sum += hourlyC[h]!;
  return sum / 24;
}

/**
 * The past years as ways in which the season may go on from today's soil.
 *
 * Each year's soil begins as today's: the difference of the last day fades as such differences have faded. Before it
 * come the coming days, as far as they are trusted.
 *
 * @param past The bed's soil in the years before.
 * @param now  What is known of it now.
 * @param site The place.
 * @returns The members; or null where no past year is known.
 *
 * Formula: X(k) = R_y(k) + [T - R_y(-1)] e^(-(k+1)/8), R_y the year's own soil, T today's; of a start D days off,
 * R_y(k) + c(k) - c(k + D), c the year's usual course.
 * Source: Day (1985), the ensemble of past years from today's state; the fading our own study of 13 stations.
 */
export function yearsAhead(past: PastSoil, now: Now, site: Site): YearsAhead | null {
  const { lastMs, knownC, comingC } = now;
  const { course } = past;
  const { zone } = site;
  const todayC = dayBefore(knownC, knownC.length);
  const date = dateAt(lastMs, zone);
  const sinceMidnightMs = lastMs - startOfDay(date, zone);
  const dayOf = (ms: number): number => (ms - past.startMs) / DAY_MS;
  const starts: { readonly fromH: number; readonly seasonFrom: number; readonly anomalyK: number }[] = [];
  let years = 0;
  for (let back = 1; back <= (past.isUsual ? 1 : yearsSince(past, lastMs)); back++) {
    let isKnown = false;
    for (const offset of course && !past.isUsual ? STARTS : [0]) {
      const startMs = startOfDay(addDays(yearsBefore(date, back), offset), zone) + sinceMidnightMs;
      const fromH = Math.round((startMs - past.startMs) / HOUR_MS);
      const seasonFrom = dayOf(startMs);
      const beforeC = dayBefore(past.hourlyC, fromH) + seasonK(past, dayOf(lastMs) - 0.5, seasonFrom - 0.5);
      if (Number.isNaN(beforeC)) continue;
      isKnown = true;
      starts.push({ fromH, seasonFrom, anomalyK: todayC - beforeC });
    }
    if (isKnown) years++;
  }
  if (starts.length === 0) return null;

  // More and more hours are asked for in turn: what is laid out stays, and the rest is added to it.
  let laidH = 0;
  let usualC: Float64Array = new Float64Array();
  let members: readonly Float64Array[] = starts.map(() => new Float64Array());
  const differencesK = new Float64Array(starts.length);
  const layOut = (upToH: number): void => {
    if (upToH <= laidH) return;
    const nHours = Math.max(upToH, comingC.length);
    const left = Float64Array.from({ length: nHours }, (_, hour) => anomalyLeft(hour));
    const nowK = Float64Array.from({ length: Math.ceil(nHours / 24) }, (_, day) =>
      course ? climatologicalOn(course, dayOf(lastMs) + day + 0.5) : 0,
    );
    members = starts.map(({ fromH, seasonFrom, anomalyK }, i) => {
      const member = longer(members[i]!, nHours);
      member.fill(NaN, laidH);
      const knownH = Math.min(nHours, past.hourlyC.length - fromH);
      const isMoved = course !== null && seasonFrom !== dayOf(lastMs);
      for (let hour = laidH; hour < knownH; ) {
        const day = Math.floor(hour / 24);
        const movedK = isMoved ? nowK[day]! - climatologicalOn(course, seasonFrom + day + 0.5) : 0;
        for (const endH = Math.min(knownH, 24 * day + 24); hour < endH; hour++)
          member[hour] = past.hourlyC[fromH + hour]! + anomalyK * left[hour]! + movedK;
      }
      if (comingC.length > 0) {
        if (laidH === 0) differencesK[i] = overlayForecast(member, comingC);
        const differenceK = differencesK[i]!;
        for (let hour = Math.max(laidH, comingC.length); hour < nHours; hour++)
          member[hour]! += differenceK * left[hour - comingC.length]!;
      }
      return member;
    });
    usualC = longer(usualC, nHours);
    overlayMean(usualC, members, laidH, (hour) => usualHour(past, dayOf(lastMs), hour));
    laidH = nHours;
  };
  return {
    years,
    isUsual: past.isUsual,
    members(nHours) {
      layOut(nHours);
      return members.map((member) => member.subarray(0, nHours));
    },
    usual(nHours) {
      layOut(nHours);
      return usualC.subarray(0, nHours);
    },
  };
}

/** The same hours with room for more. */
function longer(hours: Float64Array, nHours: number): Float64Array {
  const more = new Float64Array(nHours);
  more.set(hours);
  return more;
}

const yearsSince = ({ startMs }: PastSoil, lastMs: number): number => Math.ceil((lastMs - startMs) / (365 * DAY_MS));

/** Difference of the season's course between two days [K]. */
const seasonK = ({ course }: PastSoil, day: number, other: number): number =>
  course && day !== other ? climatologicalOn(course, day) - climatologicalOn(course, other) : 0;

const usualHour = ({ course }: PastSoil, fromDay: number, hour: number): number =>
  course ? climatologicalOn(course, fromDay + (hour + 0.5) / 24) : NaN;

/** Lays the coming days over a member, as far as they are trusted; tells how far they moved its last day [K]. */
function overlayForecast(member: Float64Array, comingC: Float64Array): number {
  let differenceK = 0;
  const fromH = Math.max(0, comingC.length - 24);
  for (let hour = 0; hour < comingC.length; hour++) {
    const movedK = comingWeight(hour) * (comingC[hour]! - member[hour]!);
    member[hour]! += movedK;
    if (hour >= fromH) differenceK += movedK / (comingC.length - fromH);
  }
  return differenceK;
}

/** Puts the mean of those members that are known into each hour from one on. */
function overlayMean(
  mean: Float64Array,
  members: readonly Float64Array[],
  fromH: number,
  otherwise: (hour: number) => number,
): void {
  const known = new Int32Array(mean.length);
  for (const member of members) {
    for (let hour = fromH; hour < mean.length; hour++) {
      const tempC = member[hour]!;
      if (Number.isNaN(tempC)) continue;
      mean[hour]! += tempC;
      known[hour]!++;
    }
  }
  for (let hour = fromH; hour < mean.length; hour++)
    mean[hour] = known[hour]! > 0 ? mean[hour]! / known[hour]! : otherwise(hour);
}
