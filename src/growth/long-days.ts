import { dayLengthH } from '../seedbed/sun/day-length.js';

/** 1 January is 1. */
export interface LongDays {
  readonly first: number;
  readonly last: number;
}

/**
 * From which day of the year to which days are so long, in the half of the year that holds the longest one.
 *
 * @param latitudeDeg North positive [°].
 * @param atLeastH    Sunrise to sunset [h].
 * @returns null: never. South of the equator `last` is below `first`, as the turn of the year lies between them.
 * @example longDays(40.05, 14.5) // => { first: 140, last: 206 }
 */
export function longDays(latitudeDeg: number, atLeastH: number): LongDays | null {
  const start = latitudeDeg < 0 ? 183 : 1;
  const dayAt = (i: number): number => ((start + i - 1) % 365) + 1;
  let [first, last] = [-1, -1];
  for (let i = 0; i < 365; i++) {
    if (dayLengthH(latitudeDeg, dayAt(i)) < atLeastH) continue;
    if (first < 0) first = i;
    last = i;
  }
  return first < 0 ? null : { first: dayAt(first), last: dayAt(last) };
}
