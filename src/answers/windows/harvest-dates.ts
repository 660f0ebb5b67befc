import { addDays, type PlainDate } from '../../basics/calendar.js';
import { hazenQuantile } from '../../basics/numerics/hazen-quantile.js';
import type { DateInYears } from './dates-in-years.js';
import type { Run } from './sureness.js';

/** When a sowing is picked: from the first harvest of early kinds to that of late ones. */
export interface HarvestDates {
  readonly from: PlainDate;
  readonly to: PlainDate;
}

/** Days from a date to the first harvest of early and of late kinds, of each year that has one; rising. */
export type RipeDays = Pick<DateInYears, 'earlyDays' | 'lateDays'>;

/** When the sowing of a date is picked, in the middle one of the years that have a harvest; null: none has. */
export function harvestOfDate({ earlyDays, lateDays }: RipeDays, date: PlainDate): HarvestDates | null {
  if (earlyDays.length === 0 || lateDays.length === 0) return null;
  return {
    from: addDays(date, Math.round(hazenQuantile(earlyDays, 0.5))),
    to: addDays(date, Math.round(hazenQuantile(lateDays, 0.5))),
  };
}

/** When the sowings of a run are picked, from those of its first date to those of its last. */
export function harvestOfRun(dates: readonly RipeDays[], run: Run, from: PlainDate): HarvestDates | null {
  const first = dates.slice(run.from, run.to + 1).findIndex(({ earlyDays }) => earlyDays.length > 0);
  if (first < 0) return null;
  const last = dates.slice(0, run.to + 1).findLastIndex(({ lateDays }) => lateDays.length > 0);
  const begin = harvestOfDate(dates[run.from + first]!, addDays(from, run.from + first));
  const end = harvestOfDate(dates[last]!, addDays(from, last));
  return begin && end ? { from: begin.from, to: [begin.to, end.to].sort()[1]! } : null;
}
