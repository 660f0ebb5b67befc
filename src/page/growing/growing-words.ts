import type { PlanAnswer } from '../../contract/plans.js';
import type { SowingAnswer } from '../../contract/sowings.js';
import { cropName, type Inventory } from '../shell/inventory.js';
import { dayMonth, type PageReader } from '../shell/words.js';

type Task = SowingAnswer['toDo'][number]['task'];

/** Urgency of each task; the lowest number presses most. */
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

/** The place where a plan's sowing is made. */
export const whereSown = (
  { method, shaded }: Pick<PlanAnswer['sowings'][number], 'method' | 'shaded'>,
  { say }: PageReader,
): string => say('page.growing.where', { where: method === 'indoors' ? 'trays' : shaded ? 'shade' : 'bed' });

/** The name of a sowing, as `Onion, sown 17 July`; with the year if it is not this one. */
export function sowingName(
  shelf: Inventory,
  { crop, date }: Pick<SowingAnswer, 'crop' | 'date'>,
  reader: PageReader,
  today: string,
): string {
  const year = date.slice(0, 4);
  const on = dayMonth(date, reader);
  return reader.say('page.growing.sown', {
    crop: cropName(shelf, crop, reader),
    date: year === today.slice(0, 4) ? on : `${on} ${year}`,
  });
}
