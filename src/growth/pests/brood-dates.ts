import { addDays, daysBetween, type PlainDate } from '../../basics/calendar.js';
import { hazenQuantile } from '../../basics/numerics/hazen-quantile.js';
import type { DailyAir } from '../workable-ground.js';
import { degreeDays } from './degree-days.js';
import type { BroodSum } from './pest-rule.js';

/** When a brood is at its most: between the outer tenths of the years, and in the middle one. */
export interface BroodDates {
  readonly from: PlainDate;
  readonly peak: PlainDate;
  readonly to: PlainDate;
  /** The day from which the sum counts. */
  readonly since: PlainDate;
  /** The heat sum of its own year up to the last known day, and that day [°C·d]; null: none of it is known. */
  readonly soFar: { readonly sumCDays: number; readonly on: PlainDate } | null;
  /** Past years that reach the sum, and those that are known. */
  readonly inYears: number;
  readonly ofYears: number;
}

/** A year with more days missing on the way is left out; a missing day counts as the last that is known. */
const MAX_MISSING = 10;
/** Sums not reached within so many days are not reached in their year [d]. */
const SEASON_DAYS = 300;
/** Fewer past years say nothing of the next. */
const MIN_YEARS = 3;
/** A brood that comes in fewer of the years is none of the place's. */
const MIN_SHARE = 0.5;

/**
 * The peak of an insect's brood in a year, from the heat of its days so far and of past years from there on.
 *
 * @param brood       Its sum, and from when it counts.
 * @param air         Days of past years; of the year itself those that are known, coming ones among them.
 * @param year        Which year: that of the day from which the sum counts.
 * @param latitudeDeg North positive [°]. South of the equator the sum counts from half a year later on.
 * @returns The dates; null where fewer than three past years are known, or most of them never reach the sum.
 * @throws ScienceError never.
 *
 * Formula: `degreeDays` summed by the day. Past years run on from the year's own sum on its last day known; 10, 50, 90 % by
 * `hazenQuantile`, rounded to days. A sum that the year itself has reached already has one date.
 * Validity: temperature alone; whether the insect lives at a place it does not say. Published errors are 1 to 2 days for carrot rust fly.
 * @example of seedcorn maggot's second brood at 40.05° N, 88.37° W, from 20 years // => peak 23 May
 */
export function broodDates(brood: BroodSum, air: DailyAir, year: number, latitudeDeg: number): BroodDates | null {
  const { firstDate } = air;
  const since = sinceIn(year, brood, latitudeDeg);
  const own = walk(brood, air, { from: since, since, sumCDays: 0 });
  // A year with too many gaps tells nothing of its own.
  const last = own.isVoid ? null : own.lastKnown;
  const next = last ? addDays(last, 1) : since;
  const days: number[] = [];
  let ofYears = 0;
  for (const past of yearsBesides(year, air)) {
    const moved = (date: PlainDate): PlainDate => yearsOn(date, past - year);
    const sumCDays = last ? own.sumCDays : 0;
    const { reached, isVoid, isOver } = walk(brood, air, { from: moved(next), since: moved(since), sumCDays });
    if (isVoid || !(reached || isOver) || moved(since) < firstDate) continue;
    ofYears++;
    if (reached) days.push(daysBetween(since, yearsOn(reached, year - past)));
  }
  if (ofYears < MIN_YEARS || days.length < MIN_SHARE * ofYears) return null;
  days.sort((a, b) => a - b);
  const dated = (p: number): PlainDate => own.reached ?? addDays(since, Math.round(hazenQuantile(days, p)));
  return {
    from: dated(0.1),
    peak: dated(0.5),
    to: dated(0.9),
    since,
    soFar: last && { sumCDays: own.sumCDays, on: last },
    inYears: days.length,
    ofYears,
  };
}

interface Walked {
  /** The heat sum up to the last known day [°C·d]. */
  readonly sumCDays: number;
  readonly lastKnown: PlainDate | null;
  /** null: the sum was not reached. */
  readonly reached: PlainDate | null;
  readonly isVoid: boolean;
  /** Did the season end, or only the record? */
  readonly isOver: boolean;
}

/** Walks on from a day until a sum is reached, the season ends, or the record does. */
function walk(
  brood: BroodSum,
  { firstDate, minC, maxC }: DailyAir,
  start: { readonly from: PlainDate; readonly since: PlainDate; readonly sumCDays: number },
): Walked {
  const end = daysBetween(firstDate, start.since) + SEASON_DAYS;
  const from = daysBetween(firstDate, start.from);
  let sum = start.sumCDays;
  let [missing, lastCDays] = [0, 0];
  let [knownSum, lastKnown] = [sum, -1];
  let day = Math.max(0, from);
  for (; day < Math.min(minC.length, end) && missing <= MAX_MISSING && sum < brood.sumCDays; day++) {
    const own = degreeDays(minC[day]!, maxC[day]!, brood);
    if (Number.isNaN(own)) missing++;
    else lastCDays = own;
    sum += lastCDays;
    if (Number.isNaN(own)) continue;
    knownSum = sum;
    lastKnown = day;
  }
  const isReached = sum >= brood.sumCDays;
  return {
    sumCDays: knownSum,
    lastKnown: lastKnown < 0 ? null : addDays(firstDate, lastKnown),
    reached: isReached ? addDays(firstDate, day - 1) : null,
    isVoid: missing > MAX_MISSING,
    isOver: day >= end,
  };
}

/** The same day some years later; 29 February becomes the 28th. */
function yearsOn(date: PlainDate, years: number): PlainDate {
  const monthDay = date.slice(4) === '-02-29' ? '-02-28' : date.slice(4);
  return `${Number(date.slice(0, 4)) + years}${monthDay}` as PlainDate;
}

/** The day from which a sum counts in a year. */
function sinceIn(year: number, { since }: BroodSum, latitudeDeg: number): PlainDate {
  if (latitudeDeg >= 0) return `${year}-${since}` as PlainDate;
  const month = Number(since.slice(0, 2)) + 6;
  return `${year}-${String(month).padStart(2, '0')}${since.slice(2)}` as PlainDate;
}

function yearsBesides(year: number, { firstDate, minC }: DailyAir): number[] {
  const first = Number(firstDate.slice(0, 4));
  const last = Number(addDays(firstDate, Math.max(0, minC.length - 1)).slice(0, 4));
  return Array.from({ length: last - first + 1 }, (_, i) => first + i).filter((one) => one !== year);
}
