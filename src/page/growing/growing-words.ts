import type { PlanAnswer } from '../../contract/plans.js';
import type { SowingAnswer } from '../../contract/sowings.js';
import { cropName, type Shelf } from '../shell/shelf.js';
import { dayMonth, type Reader } from '../shell/words.js';

type Verdict = NonNullable<SowingAnswer['judgement']>['verdict'];
type Task = SowingAnswer['toDo'][number]['task'];

export const VERDICTS: Readonly<Record<Verdict, string>> = {
  wait: 'Wait',
  'count-now': 'Count it now',
  late: 'Late',
  thin: 'Too thin',
  good: 'It stands well',
  lost: 'Lost',
};

export const EXPECTED: Readonly<Record<NonNullable<SowingAnswer['expected']>, string>> = {
  'not-yet': 'nothing is due yet',
  due: 'seedlings are due',
  past: 'all should be up',
};

export const OBSERVED: Readonly<Record<NonNullable<SowingAnswer['observed']>, string>> = {
  none: 'none seen yet',
  some: 'some seen, not yet as many as beds give',
  enough: 'as many seen as beds give',
};

/** How pressing each is; the least presses most. */
export const PRESSING: Readonly<Record<Task | 'sow', number>> = {
  'sow-again': 0,
  'fill-gaps': 1,
  sow: 2,
  count: 3,
  'mind-heat': 4,
  'mind-cold': 5,
  'keep-moist': 6,
  thin: 7,
  'harden-off': 8,
  'plant-out': 9,
  harvest: 10,
};

/** Where a sowing of a plan is made. */
export function whereSown({ method, shaded }: Pick<PlanAnswer['sowings'][number], 'method' | 'shaded'>): string {
  if (method === 'indoors') return 'in trays';
  return shaded ? 'in the bed, in shade' : 'in the bed';
}

/** Which sowing it is, as `Onion, sown 17 July`; with the year where it is not this one. */
export function sowingName(
  shelf: Shelf,
  { crop, date }: Pick<SowingAnswer, 'crop' | 'date'>,
  reader: Reader,
  today: string,
): string {
  const year = date.slice(0, 4);
  return `${cropName(shelf, crop)}, sown ${dayMonth(date, reader)}${year === today.slice(0, 4) ? '' : ` ${year}`}`;
}

/** A number of a hundred as people say it. */
export const ofHundred = (share: number): string => `${Math.round(100 * share)} of 100`;
