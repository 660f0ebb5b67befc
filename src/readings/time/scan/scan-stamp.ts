import {
  APOSTROPHE,
  BLANK,
  CLOSE,
  CLOSE_SQUARE,
  COLON,
  COMMA,
  DASH,
  DOT,
  isBlank,
  isDigit,
  isLetter,
  MINUS,
  NINE,
  OPEN,
  OPEN_SQUARE,
  PLUS,
  QUOTE,
  SLASH,
  UNDERSCORE,
  ZERO,
} from './characters.js';
import { type Layout, NOTHING, resetScan, type Scan, WORD } from './scan.js';
import { takeNumber } from './scan-number.js';
import { mayCarryOffset, takeOffset } from './scan-offset.js';
import { takeWord } from './scan-word.js';

const MAX_CHARACTERS = 80;

/**
 * Takes a stamp apart; false where the text is no stamp of this layout. Which date number is the day is not settled
 * here, nor whether there is such a day.
 *
 * @param scan - takes what is found
 * @param text - any text
 * @param layout - what the column's stamps look like
 */
export function scanStamp(scan: Scan, text: string, layout: Layout): boolean {
  const end = text.length;
  if (end > MAX_CHARACTERS) return false;
  resetScan(scan);
  let i = 0;
  while (i < end) {
    const code = text.charCodeAt(i);
    if (code >= ZERO && code <= NINE) {
      const from = i;
      let value = 0;
      let digit = code;
      while (digit >= ZERO && digit <= NINE) {
        value = 10 * value + digit - ZERO;
        i++;
        digit = i < end ? text.charCodeAt(i) : 0;
      }
      scan.numberAt = from;
      const afterNext = i + 1 < end ? text.charCodeAt(i + 1) : 0;
      if (!takeNumber(scan, value, i - from, digit, afterNext, layout)) return false;
      scan.separator = NOTHING;
    } else if (code === COLON || code === SLASH || code === DOT || code === COMMA || code === UNDERSCORE) {
      if (isAtStart(scan)) return false;
      if (scan.separator !== WORD) scan.separator = code;
      i++;
    } else if (code === QUOTE || code === APOSTROPHE || isBlank(code)) {
      if (scan.dates + scan.times > 0 && scan.separator !== WORD) scan.separator = BLANK;
      i++;
    } else if (code === DASH || code === PLUS || code === MINUS) {
      i = takeSign(scan, text, i, code);
    } else if (isLetter(code)) {
      i = takeWord(scan, text, i, layout);
    } else if (code === OPEN || code === OPEN_SQUARE) {
      if (scan.times > 0 && scan.dates === layout.dateNumbers) {
        scan.zoneWord ??= text.slice(i + 1).replace(/[)\]\s]+$/, '');
        break;
      }
      i++;
    } else if (code === CLOSE || code === CLOSE_SQUARE) i++;
    else return false;
    if (i < 0) return false;
  }
  return isWhole(scan, layout) && takeTime(scan);
}

/** No number and no word yet: a sign or a mark here is a number's own. */
const isAtStart = (scan: Scan): boolean => scan.dates === 0 && scan.times === 0 && scan.separator !== WORD;

/** Takes the sign of an offset, or a dash between numbers; returns where the text goes on, or -1. */
function takeSign(scan: Scan, text: string, at: number, code: number): number {
  if (isDigit(text.charCodeAt(at + 1)) && mayCarryOffset(scan, code)) return takeOffset(scan, text, at);
  if (code !== DASH || isAtStart(scan)) return -1;
  scan.separator = DASH;
  return at + 1;
}

/** True if all parts of the layout are there. */
function isWhole(scan: Scan, layout: Layout): boolean {
  if (scan.dates !== layout.dateNumbers || (layout.hasMonthName && scan.month === 0)) return false;
  // In front of a date "am" is German for "on"; in front of a time alone it is the half of the day.
  if (scan.halfBeforeDate !== 'none') {
    if (scan.half === 'none' && scan.dates === 0) scan.half = scan.halfBeforeDate;
    else if (scan.halfBeforeDate === 'pm') return false;
  }
  if (layout.isOrdinal) {
    if (layout.isHhmm && scan.times === 1 && scan.timeMark === NOTHING) {
      scan.minute = scan.hour;
      scan.hour = 0;
    }
    return scan.digits1 === 4 && scan.digits2 <= 3 && (scan.digits2 === 3 || scan.hourDigits > 2);
  }
  if (layout.dateNumbers > 0 || scan.half !== 'none') return true;
  return scan.times > 1 && (scan.timeMark !== NOTHING || scan.hourDigits === 4 || scan.hourDigits === 6);
}

/** Makes the time of day of its numbers; false where there is no such time. */
function takeTime(scan: Scan): boolean {
  const { half, minute, second, fractionMs } = scan;
  let { hour } = scan;
  if (half === 'pm' && hour < 12) hour += 12;
  else if (half === 'am') {
    if (hour > 12) return false;
    if (hour === 12) hour = 0;
  }
  if (hour > 24 || minute > 59 || second > 60 || (half !== 'none' && scan.times === 0)) return false;
  if (hour === 24 && (minute > 0 || second > 0 || fractionMs > 0)) return false;
  scan.msOfDay = ((hour * 60 + minute) * 60 + second) * 1000 + fractionMs;
  return true;
}
