import { DAY_MS, HOUR_MS, type PlainDate } from '../basics/calendar.js';
import type { Span } from '../germination/crop.js';
import type { Beyond } from './hours-ahead.js';
import { rangeOf } from './range.js';
import type { HourSpan } from './soil-range.js';

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

/** What a milestone's dates and range depend on. Hours since wetting. */
export interface MilestoneClock {
  /** Hours from sowing to wetting. */
  readonly waitH: number;
  readonly countH: number;
  readonly knownH: number;
  readonly beyond: Beyond;
  readonly bedTimeFactor: Span;
  dated(hour: number): PlainDate;
}

/** A milestone from the hour at which it comes, and the span that the estimate of the soil leaves open. */
export function milestoneOf(
  eventH: number,
  soil: HourSpan | null,
  { waitH, countH, knownH, beyond, bedTimeFactor, dated }: MilestoneClock,
): Milestone {
  const range = rangeOf(eventH, knownH, beyond, soil);
  // What was measured is not open, however near the count it came.
  const isOpen = (eventH > knownH || soil !== null) && range.toH > countH;
  const latest = isOpen ? null : dated(Math.max(eventH, Math.min(range.toH, countH)));
  return {
    date: dated(eventH),
    days: ((waitH + eventH) * HOUR_MS) / DAY_MS,
    range: { from: dated(range.fromH), to: latest },
    inBeds: { from: dated(eventH * bedTimeFactor.from), to: dated(eventH * bedTimeFactor.to) },
  };
}
