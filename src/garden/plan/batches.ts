/** Days of a plan by number, from its first possible sowing on; the last included. */
export interface DaySpan {
  readonly fromDay: number;
  readonly toDay: number;
}

/** A possible sowing. */
export interface BatchStart {
  /** The day it is sown. */
  readonly day: number;
  /** Did it come up well in most years? Only then it may be chosen. */
  readonly isOpen: boolean;
  /** The middle of its picking, in the middle of the years; NaN where it never was. */
  readonly ripeDay: number;
  /** The share of years in which some of it was ripe between two days. */
  reach(week: DaySpan): number;
}

/** A chosen sowing, and the weeks of harvest that are left to it: by their numbers, one after the other. */
export interface Batch<S extends BatchStart> {
  readonly start: S;
  readonly weeks: readonly number[];
  /** The least share of years in which one of its weeks was reached. */
  readonly sureness: number;
}

export interface Batches<S extends BatchStart> {
  readonly batches: readonly Batch<S>[];
  /** Numbers of the weeks that nothing reaches. */
  readonly unreached: readonly number[];
}

/** What reaches a week less often is no plan for it. */
export const MIN_REACH = 0.5;

/**
 * Chooses sowings for the weeks of a harvest, one after the other, so that each is picked when the one before it is over.
 *
 * A batch is aimed at the middle of the weeks that it is to last: the open start whose picking is nearest. As pickings
 * follow on one another evenly, so do the emergences, whatever the soil does to the sowing dates. Where the soil is shut
 * the nearest start may still reach the first of the weeks; where none does, the next kind of start is looked at. What is
 * made already serves the weeks whose middle its picking is within half a batch of, though another were nearer.
 *
 * @param weeks      In the order of time.
 * @param batchWeeks How many of them one batch lasts.
 * @param kinds      Starts of each kind in the order of days, the kinds in the order of preference.
 * @param made       Those that are made already.
 * @returns Batches in the order of their weeks; of weeks that shift later by whole weeks no batch is sown earlier than
 * before, as long as their starts' pickings never come earlier for a later day.
 */
export function batchesFor<S extends BatchStart>(
  weeks: readonly DaySpan[],
  batchWeeks: number,
  kinds: readonly (readonly S[])[],
  made: readonly S[] = [],
): Batches<S> {
  const open = kinds.map((starts) => starts.filter(({ isOpen }) => isOpen));
  const batches: Batch<S>[] = [];
  const unreached: number[] = [];
  for (let first = 0; first < weeks.length; ) {
    const last = Math.min(weeks.length, first + batchWeeks) - 1;
    const middle = (weeks[first]!.fromDay + weeks[last]!.toDay) / 2;
    const isFor = ({ isOpen, ripeDay }: S): boolean => isOpen && Math.abs(ripeDay - middle) <= (7 * batchWeeks) / 2;
    const found = [made.filter(isFor), ...open]
      .map((starts) => nearest(starts, middle))
      .find((start) => start && isReached(start, weeks[first]!));
    if (!found) {
      unreached.push(first++);
      continue;
    }
    const served = [first];
    while (served.at(-1)! < last && isReached(found, weeks[served.at(-1)! + 1]!)) served.push(served.at(-1)! + 1);
    const before = batches.at(-1);
    // At the edge of a season the same start may be the nearest again.
    const isSame = before?.start === found;
    const all = isSame ? [...before!.weeks, ...served] : served;
    if (isSame) batches.pop();
    batches.push({ start: found, weeks: all, sureness: Math.min(...all.map((week) => found.reach(weeks[week]!))) });
    first = served.at(-1)! + 1;
  }
  return { batches, unreached };
}

const isReached = (start: BatchStart, week: DaySpan): boolean => start.reach(week) >= MIN_REACH;

/** The start whose picking has its middle nearest to a day, the earliest of several. */
function nearest<S extends BatchStart>(starts: readonly S[], day: number): S | undefined {
  let best: S | undefined;
  for (const start of starts) {
    if (!best || Math.abs(start.ripeDay - day) < Math.abs(best.ripeDay - day)) best = start;
  }
  return best;
}
