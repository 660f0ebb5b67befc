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
  /** The hour by which a bed so many times slower comes as far as the chart's by an hour; null: later than is known. */
  slowerH(eventH: number, times: number): number | null;
  dated(hour: number): PlainDate;
}

/** The middle 80 % of when an event may come. */
export interface EventRange extends HourSpan {
  /** False where all of it was measured: then it is not past the count, however near the count it came. */
  readonly isOpen: boolean;
}

/** Where the slower end of beds would add more days than these, it goes by their warmth [d]. Our choice. */
const MAX_ADDED_DAYS = 30;

/** A milestone from the hour at which it comes, and its range. */
export function milestoneOf(
  eventH: number,
  range: EventRange,
  { waitH, countH, bedTimeFactor, dated, slowerH }: MilestoneClock,
): Milestone {
  const latest = range.isOpen && range.toH > countH ? null : dated(Math.max(eventH, Math.min(range.toH, countH)));
  const byDays = eventH * bedTimeFactor.to;
  const addsMuch = byDays - eventH > MAX_ADDED_DAYS * 24;
  // Days of winter multiplied would run far into summer, while in spring a slow bed wakes as others do.
  const slowestH = addsMuch ? Math.max(eventH, Math.min(byDays, slowerH(eventH, bedTimeFactor.to) ?? byDays)) : byDays;
  return {
    date: dated(eventH),
    days: ((waitH + eventH) * HOUR_MS) / DAY_MS,
    range: { from: dated(range.fromH), to: latest },
    inBeds: { from: dated(eventH * bedTimeFactor.from), to: dated(slowestH) },
  };
}

/** The hour by which seed that needs so many times the progress of an hour has made it, over hourly temperatures since wetting. */
export const slowerBy =
  (hourlyC: Float64Array, rateOf: (tempC: number) => number): MilestoneClock['slowerH'] =>
  (eventH, times) => {
    let [progress, wanted] = [0, Infinity];
    for (let hour = 0; hour < hourlyC.length; hour++) {
      progress += rateOf(hourlyC[hour]!) || 0;
      if (hour + 1 >= eventH && wanted === Infinity) wanted = times * progress;
      if (progress >= wanted) return hour + 1;
    }
    return null;
  };
