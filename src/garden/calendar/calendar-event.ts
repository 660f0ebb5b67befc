import type { Milestone, NoMilestone } from '../../answers/forecast/milestones.js';
import type { PlainDate } from '../../basics/calendar.js';
import type { Fact } from '../../basics/fact.js';
import type { Dates } from './calendar-season.js';
import type { EventFact } from './event-facts.js';

export const calendarEventKinds = [
  'sow',
  'keep-moist',
  'look-for-seedlings',
  'thin',
  'feed',
  'harden-off',
  'plant-out',
  'first-harvest',
  'last-harvest',
  'sow-again',
  'heat',
  'frost',
] as const;

/** Something to do or to heed, on whole days. */
export interface CalendarEvent extends Dates {
  /** The same for as long as it is the same thing, whatever its dates. */
  readonly uid: string;
  readonly kind: (typeof calendarEventKinds)[number];
  readonly summary: EventFact;
  /** A line for each. */
  readonly description: readonly Fact[];
}

/** An event as it is made, before it is known whose it is. `n`: which of its kind. */
export type Draft = Omit<CalendarEvent, 'uid'> & { readonly n?: number | string };

export const on = (date: PlainDate, said: Omit<Draft, 'from' | 'to'>): Draft => ({ from: date, to: date, ...said });
export const isUp = (milestone: Milestone | NoMilestone): milestone is Milestone => !('why' in milestone);
/** Rounded; a little below 0 is 0, not -0. */
export const whole = (value: number): number => Math.round(value) + 0;
/** The order of texts, and so of dates. */
export const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
