import { type CalendarEvent, compare, type Draft } from './calendar-event.js';
import type { BedSeason } from './calendar-season.js';
import { frostDrafts } from './frost-events.js';
import { plannedDrafts, sowingDrafts } from './sowing-events.js';

/** Marks our events apart from others'. */
const OURS = '@germination-forecaster';

/**
 * Events of a bed's calendar: its sowings, those that its plans need, and frost to come.
 *
 * @param season The bed, and all that is known of what grows in it.
 * @returns Events, each under a uid of its own that stays while its dates move; in the order of dates, then of uids.
 */
export function calendarEvents({ bed, sowings, plans, comingMinC }: BedSeason): CalendarEvent[] {
  const events = [
    ...sowings.flatMap((one) => withUids(`${one.sowing.id}.sowing.${bed.id}`, sowingDrafts(one, bed))),
    ...plans.flatMap(({ plan, crop, sowings: planned }) =>
      planned.flatMap((one) => withUids(`${one.turn}.${plan.id}.plan.${bed.id}`, plannedDrafts(one, crop, bed))),
    ),
    ...withUids(`bed.${bed.id}`, frostDrafts(sowings, comingMinC, bed)),
  ];
  return events.sort((a, b) => compare(a.from, b.from) || compare(a.uid, b.uid));
}

/** Ids hold no dots, so that no two things give one uid. */
const withUids = (whose: string, drafts: readonly Draft[]): CalendarEvent[] =>
  drafts.map(({ n, ...event }) => ({
    ...event,
    uid: `${event.kind}${n === undefined ? '' : `.${n}`}.${whose}${OURS}`,
  }));
