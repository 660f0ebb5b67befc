import { addDays, type PlainDate } from '../../basics/calendar.js';
import type { DateInYears, WindowCriteria } from './dates-in-years.js';
import type { Grade } from './grades.js';
import type { JudgedDates } from './judged-dates.js';
import { quantilesOf } from './quantiles.js';
import type { Reason } from './reasons.js';
import { bestDay, type Run } from './sureness.js';
import type { BestDateWhy } from './window-facts.js';

/** Which date is best, and why. */
export interface SowingBest {
  readonly date: PlainDate;
  readonly why: BestDateWhy;
  readonly grade: Grade;
  /** Why it is but fair; none where it is good. */
  readonly reasons: readonly Reason[];
}

interface BestAsked {
  readonly from: PlainDate;
  readonly prefer: 'earliest' | 'surest';
  readonly criteria: WindowCriteria;
}

/** A date is put off for heat that would cost so much of its stand, where one so many days later loses half of that or less. */
const COSTLY_SHARE = 0.1;
const PUT_OFF_FROM_DAYS = 7;
const PUT_OFF_TO_DAYS = 21;

/** The best date, and why: of the good ones the earliest with two sure weeks around it, else the surest; of fair ones the surest. */
export function bestOf(
  { from, prefer, criteria }: BestAsked,
  { all: dates, graded: { sureness, odds, runs }, years, reasonsOn }: JudgedDates,
): SowingBest | null {
  const good = runs.filter(({ grade }) => grade === 'good');
  const choosable = good.length > 0 ? good : runs.filter(({ grade }) => grade === 'fair');
  const best = choosable.length > 0 ? bestDay(good.length > 0 ? sureness : odds, choosable, prefer) : null;
  if (!best) return null;
  const day = good.length > 0 && best.isEarliest ? putOff(best.day, dates, good) : best.day;
  const half = quantilesOf(dates[day]!.halfDays);
  return {
    date: addDays(from, day),
    grade: good.length > 0 ? 'good' : 'fair',
    reasons: good.length > 0 ? [] : reasonsOn(day),
    why: {
      code: 'why.best-date',
      params: {
        isEarliest: best.isEarliest ? 'yes' : 'no',
        sharePercent: Math.round(100 * criteria.share),
        maxDays: criteria.maxDays,
        inYears: Math.round((sureness[day] || 0) * years.length),
        ofYears: years.length,
        halfDays: half && Math.round(half.p50),
        halfFromDays: half && Math.round(half.p10),
        halfToDays: half && Math.round(half.p90),
      },
    },
  };
}

/** Median share of a date's stand that is lost if thermoinhibited seed does not recover. */
function lossOf({ stand, ifHeldAreLost }: DateInYears): number {
  const [all, sure] = [quantilesOf(stand)?.p50 ?? 0, quantilesOf(ifHeldAreLost)?.p50 ?? 0];
  return all > 0 ? 1 - sure / all : 0;
}

/** A week or three later, where heat would take much of the stand and little of that of a later good date. */
function putOff(day: number, dates: readonly DateInYears[], good: readonly Run[]): number {
  const loss = lossOf(dates[day]!);
  if (loss <= COSTLY_SHARE) return day;
  for (let later = day + PUT_OFF_FROM_DAYS; later <= Math.min(dates.length - 1, day + PUT_OFF_TO_DAYS); later++) {
    const isGood = good.some(({ from, to }) => from <= later && later <= to);
    if (isGood && lossOf(dates[later]!) <= loss / 2) return later;
  }
  return day;
}
