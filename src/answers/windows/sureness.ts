import { centredMean } from './centred-mean.js';

/** A date's sureness is smoothed over this many days around it. */
const SMOOTHED_DAYS = 7;
const MIN_WINDOW_DAYS = 7;

/** The share of years in which each date was good, smoothed over a week. */
export const smoothed = (shares: ArrayLike<number>): Float64Array => centredMean(shares, SMOOTHED_DAYS);

/** A run of dates by index, the last included. */
export interface Run {
  readonly from: number;
  readonly to: number;
}

/** Runs of a week or more in which every date is at least so sure. */
export function sureRuns(sureness: ArrayLike<number>, atLeast: number): Run[] {
  const runs: Run[] = [];
  let from = -1;
  for (let day = 0; day <= sureness.length; day++) {
    const isSure = day < sureness.length && sureness[day]! >= atLeast;
    if (isSure && from < 0) from = day;
    if (isSure || from < 0) continue;
    if (day - from >= MIN_WINDOW_DAYS) runs.push({ from, to: day - 1 });
    from = -1;
  }
  return runs;
}

/** The best date has two sure weeks around it. */
const AROUND_DAYS = 15;
const SURE_AROUND = 0.9;

/** The best of some dates by index, and whether it is the earliest with sure weeks around it rather than the surest. */
export interface BestDay {
  readonly day: number;
  readonly isEarliest: boolean;
}

/**
 * The date to sow on: the earliest in a window with two sure weeks around it, else the surest.
 *
 * @param sureness The dates' sureness. Shape (n); NaN where nothing is known.
 * @param windows  Runs of dates of which it is chosen; none: of all.
 * @param prefer   `surest`: the surest of all in any case.
 * @returns null where no date was ever good.
 */
export function bestDay(
  sureness: Float64Array,
  windows: readonly Run[],
  prefer: 'earliest' | 'surest',
): BestDay | null {
  const around = centredMean(sureness, AROUND_DAYS);
  const isIn = (day: number): boolean =>
    windows.length === 0 || windows.some(({ from, to }) => from <= day && day <= to);
  const highest = (values: Float64Array): number =>
    values.reduce((best, value, day) => (value > (values[best] ?? -1) + 1e-12 && isIn(day) ? day : best), -1);
  const sure = windows.flatMap((run) => {
    for (let day = run.from; day <= run.to; day++) if (around[day]! >= SURE_AROUND) return [day];
    return [];
  });
  const isEarliest = prefer === 'earliest' && sure.length > 0;
  const day = isEarliest ? sure[0]! : highest(prefer === 'surest' ? sureness : around);
  return day >= 0 && sureness[day]! > 0 ? { day, isEarliest } : null;
}
