import { COLON, isDigit, PLUS, ZERO } from './characters.js';
import { NOTHING, type Scan } from './scan.js';

/** An offset from UTC is at most so many minutes. */
const MAX_OFFSET_MINUTES = 14 * 60;

/**
 * May a sign that stands here begin an offset from UTC? A dash is its sign only behind a minute: in `2027-05-01-10` and
 * `10-00-00` it parts numbers. Behind a bare number it is none: `2027-05` is a month.
 */
export const mayCarryOffset = (scan: Scan, sign: number): boolean =>
  scan.isUniversal ||
  (scan.zoneWord === null &&
    (scan.dates > 0 || scan.timeMark !== NOTHING) &&
    (scan.times >= 2 || (scan.times === 1 && sign === PLUS)));

/** Reads `+02:00`, `-0930`, `+2`; returns where the text goes on, or -1. */
export function takeOffset(scan: Scan, text: string, at: number): number {
  if (!Number.isNaN(scan.offsetMinutes) && !scan.isUniversal) return -1;
  scan.isUniversal = false;
  let i = at + 1;
  let hours = 0;
  while (isDigit(text.charCodeAt(i))) hours = 10 * hours + text.charCodeAt(i++) - ZERO;
  const digits = i - at - 1;
  let minutes = 0;
  if (digits === 4) {
    minutes = hours % 100;
    hours = Math.floor(hours / 100);
  } else if (digits > 2) return -1;
  else if (text.charCodeAt(i) === COLON) {
    const [tens, ones] = [text.charCodeAt(i + 1), text.charCodeAt(i + 2)];
    if (!isDigit(tens) || !isDigit(ones) || isDigit(text.charCodeAt(i + 3))) return -1;
    minutes = 10 * (tens - ZERO) + ones - ZERO;
    i += 3;
  }
  const offset = 60 * hours + minutes;
  if (offset > MAX_OFFSET_MINUTES || minutes > 59) return -1;
  scan.offsetMinutes = text.charCodeAt(at) === PLUS || offset === 0 ? offset : -offset;
  return i;
}
