const BINS = 12;
/** Days needed in each twelfth of the year. */
const MIN_PER_BIN = 20;
const YEAR_DAYS = 366;

/**
 * True when daily values cover a whole year: twenty of them or more in each twelfth of it.
 *
 * A count of days would not do: the same summer sent again and again says nothing about winter.
 *
 * @param dayOfYear Day of the year of each value, 1 to 366. Shape (n).
 * @param values    NaN is missing. Shape (n).
 */
export function coversYear(dayOfYear: ArrayLike<number>, values: ArrayLike<number>): boolean {
  const known = new Int32Array(BINS);
  for (let i = 0; i < values.length; i++) {
    if (!Number.isNaN(values[i]!)) known[Math.floor(((dayOfYear[i]! - 1) * BINS) / YEAR_DAYS)]!++;
  }
  return known.every((days) => days >= MIN_PER_BIN);
}
