import { addDays, type PlainDate } from '../../basics/calendar.js';
import type { DateInYears } from './dates-in-years.js';
import type { Grade, Graded, GradedRun } from './grades.js';
import { type HarvestDates, harvestOfRun } from './harvest-dates.js';
import type { InsteadFact } from './window-facts.js';

/** One way to grow it: where it is sown, and when. */
export interface SowingWay {
  readonly method: 'direct';
  readonly grade: Grade;
  readonly sow: { readonly from: PlainDate; readonly best: PlainDate; readonly to: PlainDate };
  readonly harvest: HarvestDates | null;
}

/** What would make a date good where none, or few, are. */
export interface SowingInstead {
  readonly action: 'wait' | 'cover';
  readonly grade: Grade;
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly text: InsteadFact;
}

/** The ways to grow it, the better first. */
export function waysOf(
  windows: readonly GradedRun[],
  dates: readonly DateInYears[],
  { odds }: Graded,
  best: PlainDate | null,
  from: PlainDate,
): SowingWay[] {
  const dated = (day: number): PlainDate => addDays(from, day);
  return windows
    .toSorted((a, b) => Number(b.grade === 'good') - Number(a.grade === 'good') || a.from - b.from)
    .map((run) => {
      const isBest = best !== null && dated(run.from) <= best && best <= dated(run.to);
      const surest = odds
        .slice(run.from, run.to + 1)
        .reduce((at, one, day, all) => (one > all[at]! + 1e-12 ? day : at), 0);
      return {
        method: 'direct',
        grade: run.grade,
        sow: { from: dated(run.from), best: isBest ? best : dated(run.from + surest), to: dated(run.to) },
        harvest: harvestOfRun(dates, run, from),
      };
    });
}

/** What to do where the first date is not good: wait for the next dates that are, or, where there are none, for fair ones. */
export function insteadOf(runs: readonly GradedRun[], from: PlainDate): SowingInstead[] {
  if (runs[0]?.grade === 'good') return [];
  const next = runs.find(({ grade }) => grade === 'good') ?? runs.find(({ grade }, i) => grade === 'fair' && i > 0);
  if (!next) return [];
  const dates = { from: addDays(from, next.from), to: addDays(from, next.to) };
  return [{ action: 'wait', grade: next.grade, ...dates, text: { code: 'instead.wait', params: dates } }];
}
