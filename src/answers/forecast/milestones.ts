import { DAY_MS, HOUR_MS, type PlainDate } from '../../basics/calendar.js';
import type { Span } from '../../germination/crop.js';
import type { HourSpan } from '../soil/soil-range.js';

/** From one date to another; null: later than the count. */
export interface DateSpan {
  readonly from: PlainDate;
  readonly to: PlainDate | null;
}

/** When a share of those that come is up. */
export interface Milestone {
  readonly date: PlainDate;
  /** Elapsed hours since sowing / 24. */
  readonly days: number;
  readonly range: DateSpan;
  readonly inBeds: { readonly from: PlainDate; readonly to: PlainDate };
}

export interface NoMilestone {
  readonly why: 'not-by-count-day' | 'not-at-this-temperature';
}

/** The clock by which a milestone is dated. Hours since wetting. */
export interface MilestoneClock {
  /** Hours from sowing to wetting. */
  readonly waitH: number;
  readonly countH: number;
  readonly bedTimeFactor: Span;
  dated(hour: number): PlainDate;
}

/** The middle 80 % of when an event may come. */
export interface EventRange extends HourSpan {
  /** False where all of it was measured: then it is not past the count, however near the count it came. */
  readonly isOpen: boolean;
}

/** A milestone from the hour at which it comes, and its range. */
export function milestoneOf(
  eventH: number,
  range: EventRange,
  { waitH, countH, bedTimeFactor, dated }: MilestoneClock,
): Milestone {
  const latest = range.isOpen && range.toH > countH ? null : dated(Math.max(eventH, Math.min(range.toH, countH)));
  return {
    date: dated(eventH),
    days: ((waitH + eventH) * HOUR_MS) / DAY_MS,
    range: { from: dated(range.fromH), to: latest },
    inBeds: { from: dated(eventH * bedTimeFactor.from), to: dated(eventH * bedTimeFactor.to) },
  };
}
