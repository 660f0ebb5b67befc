import type { DateInYears, WindowCriteria } from './dates-in-years.js';
import { type Run, smoothed } from './sureness.js';

export const grades = ['good', 'fair', 'poor'] as const;
export type Grade = (typeof grades)[number];

/** Fair is what is good in half of the years, or fairly good in them. Our assumption, as are all shares here. */
const FAIR_SHARE = 0.5;
/** Odds of a date that is fair and no better in a year. */
const FAIR_ODDS = 0.6;
/** Shorter changes of grade are not told [d]. */
const MIN_SPAN_DAYS = 7;

/** Dates on end of one grade. */
export interface GradedRun extends Run {
  readonly grade: Grade;
}

/** Each date's grade, and how good it is. */
export interface Graded {
  /** The share of years in which it was good, as a mean of the week around it. Shape (n); NaN where nothing is known. */
  readonly sureness: Float64Array;
  /** The same, where what is fair in all years counts for no more than that. */
  readonly odds: Float64Array;
  /** Every date in exactly one, of a week or more but at the ends. */
  readonly runs: readonly GradedRun[];
}

/**
 * Grades dates by what they did in past years: good where so many years were, fair where half of them were at least fair.
 *
 * @param dates    In their order.
 * @param criteria `sureness`: in so many of the years a date has to be good.
 */
export function gradesOf(
  dates: readonly Pick<DateInYears, 'good' | 'fair' | 'thin'>[],
  { sureness: atLeast }: Pick<WindowCriteria, 'sureness'>,
): Graded {
  const sureness = smoothed(dates.map(({ good }) => good));
  const fair = smoothed(dates.map((date) => date.fair));
  const thin = smoothed(dates.map((date) => date.thin));
  const odds = sureness.map((sure, day) => {
    const isThinlySure = thin[day]! >= atLeast - 1e-9;
    return Math.max(sure, Math.min(FAIR_ODDS, isThinlySure ? thin[day]! : fair[day]!)) || 0;
  });
  const grade = Array.from(odds, (one, day) => gradeOfShares(sureness[day]!, one, { sureness: atLeast }));
  return { sureness, odds, runs: gradeRuns(grade) };
}

/** The grade of a date by the shares of years in which it was good, and at least fair. */
export function gradeOfShares(good: number, fair: number, { sureness }: Pick<WindowCriteria, 'sureness'>): Grade {
  if (good >= sureness - 1e-9) return 'good';
  return fair >= Math.min(FAIR_SHARE, sureness) - 1e-9 ? 'fair' : 'poor';
}

/** Runs of one grade among dates on end, of a week or more but at the ends. */
export const gradeRuns = (grade: readonly Grade[]): GradedRun[] => withoutShort(runsOf(grade));

function runsOf(grade: readonly Grade[]): GradedRun[] {
  const runs: { from: number; to: number; grade: Grade }[] = [];
  grade.forEach((one, day) => {
    const last = runs.at(-1);
    if (last?.grade === one) last.to = day;
    else runs.push({ from: day, to: day, grade: one });
  });
  return runs;
}

const lengthOf = ({ from, to }: Run): number => to - from + 1;
const RANK: Readonly<Record<Grade, number>> = { good: 2, fair: 1, poor: 0 };

/** Short runs between others become part of the neighbour that promises less, the shortest first. */
function withoutShort(runs: readonly GradedRun[]): GradedRun[] {
  let left = [...runs];
  for (;;) {
    const inner = left.slice(1, -1).filter((run) => lengthOf(run) < MIN_SPAN_DAYS);
    const shortest = inner.sort((a, b) => lengthOf(a) - lengthOf(b))[0];
    if (!shortest) return left;
    const at = left.indexOf(shortest);
    const [before, after] = [left[at - 1]!, left[at + 1]!];
    const grade = RANK[before.grade] <= RANK[after.grade] ? before.grade : after.grade;
    left = joined(left.with(at, { ...shortest, grade }));
  }
}

function joined(runs: readonly GradedRun[]): GradedRun[] {
  const all: GradedRun[] = [];
  for (const run of runs) {
    const last = all.at(-1);
    if (last?.grade === run.grade) all[all.length - 1] = { ...last, to: run.to };
    else all.push(run);
  }
  return all;
}

/** Two good runs are one window across so many fair days; so many fair days without a good one are a window of their own [d]. */
const FAIR_WITHIN_DAYS = 14;
const MIN_FAIR_DAYS = 14;

/**
 * The windows among graded runs: good ones of a week or more, joined across short fair ones; and where dates that are no worse than
 * fair hold no good one, they themselves.
 *
 * @param minFairDays Where fewer are enough for that.
 */
export function windowRuns(runs: readonly GradedRun[], minFairDays = MIN_FAIR_DAYS): GradedRun[] {
  const windows: GradedRun[] = [];
  const isBeside = (i: number): boolean => runs[i - 1]?.grade === 'good' || runs[i + 1]?.grade === 'good';
  runs.forEach((run, i) => {
    const last = windows.at(-1);
    if (run.grade === 'good' && lengthOf(run) >= MIN_SPAN_DAYS) {
      const between = run.from - (last?.to ?? -Infinity) - 1;
      const isJoined = last?.grade === 'good' && between <= FAIR_WITHIN_DAYS && runs[i - 1]?.grade === 'fair';
      if (isJoined) windows[windows.length - 1] = { ...last, to: run.to };
      else windows.push(run);
    } else if (run.grade === 'fair' && lengthOf(run) >= minFairDays && !isBeside(i)) windows.push(run);
  });
  return windows;
}
