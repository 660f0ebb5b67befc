import { addDays, daysBetween, type PlainDate } from '../basics/calendar.js';
import type { Dates, GrowingSowing, SowingToMake } from './calendar-events.js';
import type { GardenPlan } from './plan.js';
import type { Plan } from './season-store.js';

/**
 * The sowings of a plan that are still to be made, each by the number of its turn.
 *
 * A plan is made anew every day, of the sowings that can be made from that day on: what was the second is then the first.
 * So turns are numbered by the part of the harvest that they are for, which stays where it is. A turn for which something
 * was sown already is over: it would otherwise be put off from day to day.
 *
 * @param plan    The harvest that is wanted.
 * @param planned What is to be sown for it, from today on.
 * @param made    The bed's sowings.
 */
export function sowingsToMake(
  plan: Plan,
  { sowings, weeksPerSowing }: Pick<GardenPlan, 'sowings' | 'weeksPerSowing'>,
  made: readonly Pick<GrowingSowing, 'sowing' | 'harvest'>[],
): SowingToMake[] {
  const turnDays = 7 * (weeksPerSowing ?? 1);
  const turnOf = (harvest: Dates): number => Math.floor(daysBetween(plan.harvest.from, middleOf(harvest)) / turnDays);
  const crop = JSON.stringify(plan.crop);
  const over = new Set(
    made.flatMap(({ sowing, harvest }) =>
      harvest !== null && JSON.stringify(sowing.crop) === crop ? [turnOf(harvest)] : [],
    ),
  );
  let last = -1;
  return sowings
    .map(({ date, seeds, method, half, harvest, indoors }): SowingToMake => {
      last = Math.max(last + 1, turnOf(harvest));
      return { turn: last, date, seeds, method, half, harvest, indoors };
    })
    .filter(({ turn }) => !over.has(turn));
}

const middleOf = ({ from, to }: Dates): PlainDate => addDays(from, Math.floor(daysBetween(from, to) / 2));
