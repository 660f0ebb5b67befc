import type { PlainDate } from '../../basics/calendar.js';
import type { Count } from '../store/season-store.js';

/** Seedlings emerged by a count, including those pulled out. */
export interface Tally {
  readonly date: PlainDate;
  readonly came: number;
  /** Number of seeds in the counted stretch; null: all seeds sown. */
  readonly ofSeeds: number | null;
  /** After thinning nobody knows how many there were: so many at least. */
  readonly isAtLeast: boolean;
}

/**
 * What counts say of all that came. What was pulled out before one count is missing at the next as well: where a later
 * count says nothing of it, the earlier one holds; of another stretch, only that some may have been.
 *
 * @param counts In the order of dates.
 * @example of 30 that stand with 70 pulled out, and 31 at the next count // => 100 came, and 101
 */
export function talliesOf(counts: readonly Count[]): Tally[] {
  let before: Count | null = null;
  return counts.map((count) => {
    if (count.thinned !== false) before = count;
    const thinned = before === null || before.ofSeeds === count.ofSeeds ? (before?.thinned ?? 0) : true;
    return {
      date: count.date,
      came: count.seedlings + (typeof thinned === 'number' ? thinned : 0),
      ofSeeds: count.ofSeeds,
      isAtLeast: thinned === true,
    };
  });
}
