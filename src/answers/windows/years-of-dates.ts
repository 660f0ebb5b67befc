import {
  addDays,
  DAY_MS,
  daysBetween,
  HOUR_MS,
  instantsAt,
  type PlainDate,
  startOfDay,
} from '../../basics/calendar.js';
import { NORMAL_IN_THREE } from '../ahead/ensemble.js';
import { type PastSoil, yearsBefore } from '../ahead/past-soil.js';
import { anomalyLeft, comingWeight, dayBefore } from '../ahead/years-ahead.js';
import type { Site } from '../soil/known-hours.js';
import type { DatesInYears, WindowCriteria } from './dates-in-years.js';
import type { YearOfDates } from './year-of-dates.js';

/** Which dates are asked, and of what hour. */
export interface DatesAsked {
  readonly site: Site;
  readonly from: PlainDate;
  readonly time: string;
  readonly criteria: WindowCriteria;
  /** Seedlings are counted so long after the sowing [d]; undefined: `maxDays`. */
  readonly countDays?: number;
}

/** Today's anomaly is forgotten after so long [h]. */
const FORGOTTEN_H = 60 * 24;
/** What is left of it in each of those hours. */
const LEFT = Float64Array.from({ length: FORGOTTEN_H }, (_, hour) => anomalyLeft(hour));
/** The air is looked at so long after the last count [d]: longer than any seedling stands before its harvest is over. */
const GROWING_DAYS = 290;
/** A usual year's weather may be off by this much over the weeks to emergence, colder or warmer [K]: our judgement from the
 * spread of days of soil at 5 cm (2.25 K) and how long it lasts. */
const CLIMATOLOGICAL_YEARS_SD_K = 2;
/** In four years of five the last frost is over when the usual minimum is this far above 0 °C [K]: the middle of 13 stations of
 * the U.S. Climate Reference Network, where it was 4 to 10 K, spring and autumn. */
export const FROST_BELOW_USUAL_K = 8;

/**
 * The dates of a season as each of the past years would have had them, from today's soil.
 *
 * @param past   The bed's soil so far.
 * @param asked  The dates; they may lie in the past, and then the year itself is one of them.
 * @param nDates How many.
 * @returns The years of which some of the dates are known, the earliest first; `year` is that of the first date.
 */
export function yearsOfDates(past: PastSoil, asked: DatesAsked, nDates: number): (YearOfDates & { year: number })[] {
  const { from, site } = asked;
  const fromMs = startOfDay(from, site.zone);
  const most = Math.ceil((fromMs - past.startMs) / (365 * DAY_MS)) + 1;
  const dates = Array.from({ length: nDates }, (_, day) => addDays(from, day));
  const leapsAt = dates.flatMap((date, day) => (/02-29$|03-01$/.test(date) && day > 0 ? [day] : []));
  const years: (YearOfDates & { year: number })[] = [];
  for (let back = most; back >= 0; back--) {
    const own = yearOfDates(past, asked, dates, leapsAt, back);
    if (own) years.push({ ...own, year: Number(from.slice(0, 4)) - back });
  }
  return years;
}

/** The dates as they would be so many years earlier; null where nothing of them is known. */
function yearOfDates(
  past: PastSoil,
  { site, from, time, criteria, countDays = criteria.maxDays }: DatesAsked,
  dates: readonly PlainDate[],
  leapsAt: readonly number[],
  back: number,
): YearOfDates | null {
  const nDates = dates.length;
  const { zone } = site;
  const date = yearsBefore(from, back);
  const startH = Math.round((startOfDay(date, zone) - past.startMs) / HOUR_MS);
  const nHours = 24 * (nDates + countDays + 2);
  const hourlyC = new Float64Array(nHours).fill(NaN);
  const knownFromH = Math.max(0, -startH);
  const knownToH = Math.min(nHours, past.hourlyC.length - startH);
  if (knownFromH >= knownToH) return null;
  hourlyC.set(past.hourlyC.subarray(startH + knownFromH, startH + knownToH), knownFromH);
  if (hourlyC.every(Number.isNaN)) return null;
  const startMs = past.startMs + startH * HOUR_MS;
  const instants = instantsAt(date, nDates + 1, time, zone);
  const sowH = new Float64Array(nDates);
  // How many days more lie between the year's dates than between those asked: a leap day's, in one or the other.
  let more = 0;
  for (let day = 0; day < nDates; day++) {
    if (leapsAt.includes(day)) more = daysBetween(date, yearsBefore(dates[day]!, back)) - day;
    sowH[day] = Math.round((instants[day + more]! - startMs) / HOUR_MS);
  }
  if (back > 0) bringToToday(hourlyC, past, { zone, from, startH });
  const air = past.air;
  const firstDay = air ? Math.max(0, daysBetween(air.firstDate, date)) : 0;
  return {
    hourlyC,
    sowH,
    ...(air
      ? airAhead(past, { from, back, firstDay, nDays: nDates + countDays + GROWING_DAYS }, zone)
      : { minC: null, meanC: null }),
    minFromH: air ? 24 * (firstDay - daysBetween(air.firstDate, date)) : 0,
  };
}

/** Lays what is left of today's anomaly, and the coming days, over a past year's hours that lie ahead of today. */
function bringToToday(
  hourlyC: Float64Array,
  past: PastSoil,
  { zone, from, startH }: { readonly zone: Site['zone']; readonly from: PlainDate; readonly startH: number },
): void {
  const leadH = Math.round((startOfDay(from, zone) - past.startMs) / HOUR_MS) - past.hourlyC.length;
  if (leadH >= FORGOTTEN_H) return;
  // Where the record begins with the very day, its first day stands for the one before.
  const ownH = Math.max(24, startH - leadH);
  const oddK = dayBefore(past.hourlyC, past.hourlyC.length) - dayBefore(past.hourlyC, ownH);
  // Of a year that lacks just that day nothing can be said but what it was.
  if (Number.isNaN(oddK)) return;
  const lastH = Math.min(hourlyC.length, FORGOTTEN_H - leadH);
  for (let hour = Math.max(0, -leadH); hour < lastH; hour++) {
    const ahead = leadH + hour;
    hourlyC[hour]! += oddK * LEFT[ahead]!;
    if (ahead < past.comingC.length) hourlyC[hour]! += comingWeight(ahead) * (past.comingC[ahead]! - hourlyC[hour]!);
  }
}

/** The air of a past year, and of the coming days where they fall on its dates. */
function airAhead(
  { startMs, hourlyC, air }: PastSoil,
  { from, back, firstDay, nDays }: { from: PlainDate; back: number; firstDay: number; nDays: number },
  zone: Site['zone'],
): { minC: Float64Array; meanC: Float64Array } {
  const { firstDate, minC, maxC } = air!;
  const todayDay = Math.ceil((startMs + hourlyC.length * HOUR_MS - startOfDay(firstDate, zone)) / DAY_MS - 0.5);
  const own = minC.slice(firstDay, Math.min(todayDay, firstDay + nDays));
  const meanC = new Float64Array(own.length);
  for (let day = 0; day < own.length; day++) meanC[day] = (own[day]! + maxC[firstDay + day]!) / 2;
  if (back === 0) return { minC: own, meanC };
  const first = addDays(firstDate, firstDay);
  const ahead = daysBetween(yearsBefore(from, back), first);
  // The day of the record that is so far ahead of today as the first of `own` was of its year's date.
  const realDay = daysBetween(firstDate, addDays(from, ahead));
  for (let real = Math.max(todayDay, realDay); real < Math.min(minC.length, realDay + own.length); real++) {
    if (comingWeight(24 * (real - todayDay)) <= 0.5) continue;
    own[real - realDay] = minC[real]!;
    meanC[real - realDay] = (minC[real]! + maxC[real]!) / 2;
  }
  return { minC: own, meanC };
}

/** The same of a usual year: as it is, and as odd as years are; air as cold as it is in one year of five. */
export function climatologicalYears(usual: PastSoil, asked: DatesAsked, nDates: number): YearOfDates[] {
  const own = yearsOfDates(usual, asked, nDates).find(({ hourlyC }) => !hourlyC.some(Number.isNaN))!;
  const minC = own.minC?.map((usualC) => usualC - FROST_BELOW_USUAL_K);
  return NORMAL_IN_THREE.map((anomaly) => ({
    ...own,
    minC: minC ?? null,
    hourlyC: own.hourlyC.map((tempC) => tempC + anomaly * CLIMATOLOGICAL_YEARS_SD_K),
  }));
}

/** What the dates would have done in a usual year; good is what is good in the one as it is. */
export function datesInClimatologicalYear(
  usual: PastSoil,
  asked: DatesAsked,
  nDates: number,
  judge: (years: readonly YearOfDates[]) => DatesInYears,
): DatesInYears {
  const years = climatologicalYears(usual, asked, nDates);
  const [itself, all] = [judge(years.slice(0, 1)), judge(years)];
  return {
    ...all,
    all: all.all.map((date, day) => ({ ...date, good: itself.all[day]!.good, whyNot: itself.all[day]!.whyNot })),
  };
}
