import { addDays, daysBetween, type PlainDate } from '../../basics/calendar.js';
import type { Dates, SowingToMake } from '../calendar/calendar-season.js';
import type { Plan } from '../store/season-store.js';
import type { GardenPlan } from './plan.js';

/**
 * The sowings of a plan that are still to be made, each by the number of its turn.
 *
 * A plan is made anew every day, of the sowings that can be made from that day on: what was the second is then the first.
 * So turns are numbered by the part of the harvest that they are for, which stays where it is.
 *
 * @param plan    The harvest that is wanted.
 * @param planned What is to be sown for it, and what was sown already, which is left out.
 */
export function sowingsToMake(
  plan: Plan,
  { sowings, weeksPerSowing }: Pick<GardenPlan, 'sowings' | 'weeksPerSowing'>,
): SowingToMake[] {
  const turnDays = 7 * (weeksPerSowing ?? 1);
  let last = -1;
  return sowings.flatMap(({ date, seeds, method, half, harvest, indoors, sown }): SowingToMake[] => {
    last = Math.max(last + 1, Math.floor(daysBetween(plan.harvest.from, middleOf(harvest)) / turnDays));
    return sown ? [] : [{ turn: last, date, seeds, method, half, harvest, indoors }];
  });
}

const middleOf = ({ from, to }: Dates): PlainDate => addDays(from, Math.floor(daysBetween(from, to) / 2));
