import { MIN_MARK, missingMarks } from '../columns/temperature-words.js';

const BLANK = 32;
const COMMA = 44;
const DASH = 45;
const DOT = 46;
const ZERO = 48;
/** Powers of ten that doubles hold exactly, so that one division gives the nearest double. */
const POWERS = Float64Array.from({ length: 16 }, (_, i) => 10 ** i);
const MAX_DIGITS = 15;

/**
 * Reads the number in a cell of bytes into `into[slot]`. Returns where the cell ends; -1 where the number is not of the
 * plainest form or stands for no value, and `readNumber` has to look at the cell's text.
 *
 * @param bytes     The cell is followed by a byte that is no digit.
 * @param from      The cell's first byte.
 * @param delimiter Its code: as a delimiter, a comma is no decimal mark.
 */
export function numberInBytes(
  bytes: Uint8Array,
  from: number,
  delimiter: number,
  into: Float64Array,
  slot: number,
): number {
  let i = from;
  while (bytes[i] === BLANK) i++;
  const isNegative = bytes[i] === DASH;
  if (isNegative) i++;
  const start = i;
  let value = 0;
  let markAt = -1;
  for (; ; i++) {
    const code = bytes[i]!;
    const digit = code - ZERO;
    if (digit >= 0 && digit <= 9) value = 10 * value + digit;
    else if ((code === DOT || code === COMMA) && code !== delimiter && markAt < 0 && i > start) markAt = i;
    else break;
  }
  const digits = i - start - (markAt < 0 ? 0 : 1);
  if (digits === 0 || digits > MAX_DIGITS || markAt === i - 1) return -1;
  if (markAt >= 0) value /= POWERS[i - markAt - 1]!;
  if (value >= MIN_MARK && missingMarks.has(isNegative ? -value : value)) return -1;
  into[slot] = isNegative ? -value : value;
  while (bytes[i] === BLANK) i++;
  return i;
}
