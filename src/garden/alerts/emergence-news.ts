import { daysBetween, type PlainDate } from '../../basics/calendar.js';
import type { SowingNow } from '../sowing/known-now.js';
import { inBed, sownInBed } from './in-bed.js';
import type { News } from './news.js';

/** Moves of less are the weather's usual to and fro [d]. */
const MIN_SHIFT_DAYS = 2;

/** Which sowing was told of, and when half of it was to be up; null: not by the count. */
interface Told {
  readonly sown: PlainDate;
  readonly half: PlainDate | null;
}

/**
 * What is new of when half of a sowing is up: that it has moved by two days or more from what was last told, or comes
 * no longer, or comes after all. What is first known of a sowing is only remembered, and so is what is new of one whose
 * date was changed, or which is up by all that was ever said.
 *
 * @param told What was last told, as `mark` says; null: nothing.
 * @returns undefined: nothing is known today, and what was told stands.
 */
export function emergenceNews({ sowing, crop, today, forecast }: SowingNow, told: string | null): News | undefined {
  if (!forecast) return undefined;
  const { emergence } = forecast;
  const half = 'date' in emergence.half ? emergence.half.date : null;
  const now: Told = { sown: sowing.date, half };
  const mark = JSON.stringify(now);
  const before = told === null ? null : (JSON.parse(told) as Told);
  if (before === null || before.sown !== now.sown) return { mark, data: null };
  // Smaller moves add up, as they are set against what was told.
  if (!hasMoved(before.half, half)) return { mark: told, data: null };
  if (![before.half, half].some((date) => date !== null && date >= today)) return { mark, data: null };
  return {
    mark,
    data: {
      ...inBed(sowing, crop),
      half,
      before: before.half,
      text: {
        code: 'news.emergence-shift',
        params: { ...sownInBed(sowing, crop), halfOn: half, beforeOn: before.half, ...shiftOf(before.half, half) },
      },
    },
  };
}

const hasMoved = (before: PlainDate | null, now: PlainDate | null): boolean =>
  before === null || now === null ? before !== now : Math.abs(daysBetween(before, now)) >= MIN_SHIFT_DAYS;

/** Days that a date has moved; 0 if there was none before, or is none now. */
function shiftOf(before: PlainDate | null, now: PlainDate | null): { shiftDays: number; isLater: 'yes' | 'no' } {
  const days = before === null || now === null ? 0 : daysBetween(before, now);
  return { shiftDays: Math.abs(days), isLater: days > 0 ? 'yes' : 'no' };
}
