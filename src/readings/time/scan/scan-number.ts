import { BLANK, COLON, COMMA, DASH, DOT, isDigit, isHourMark, SLASH } from './characters.js';
import { type Layout, NOTHING, type Scan, WORD } from './scan.js';

/**
 * Gives a number its place; false where there is none for it.
 *
 * @param next The code of the sign behind it, and behind that one; 0 at the text's end.
 */
export function takeNumber(
  scan: Scan,
  value: number,
  digits: number,
  next: number,
  afterNext: number,
  layout: Layout,
): boolean {
  const { times, dates, separator } = scan;
  if (times > 0) {
    if (scan.isDateBehind && dates < layout.dateNumbers) return takeDateNumber(scan, value, digits, layout);
    if (separator === COLON || separator === DOT || separator === COMMA) return takeTimeNumber(scan, value, digits);
    if (dates === layout.dateNumbers || (separator !== BLANK && separator !== WORD)) return false;
    scan.isDateBehind = true;
    return takeDateNumber(scan, value, digits, layout);
  }
  const startsClock = digits <= 2 && isHourMark(next);
  const mayStart = dates === 0 || dates === layout.dateNumbers || layout.hasMonthName;
  if (startsClock && mayStart) return startTime(scan, value, digits, COLON);
  // A date without its year: the hour must not be taken for it.
  if (startsClock && separator === BLANK) return false;
  if (dates < layout.dateNumbers) return takeDateNumber(scan, value, digits, layout);
  if (separator === DOT || separator === SLASH || separator === DASH) return false;
  const hasDot = next === DOT && isDigit(afterNext) && digits <= 2 && (dates > 0 || separator === WORD);
  return startTime(scan, value, digits, hasDot ? DOT : NOTHING);
}

function takeDateNumber(scan: Scan, value: number, digits: number, layout: Layout): boolean {
  if (layout.isCompact) return takeCompact(scan, value, digits);
  if (layout.isOrdinal && digits === 7 && scan.dates === 0) {
    return takeDatePart(scan, Math.floor(value / 1000), 4) && takeDatePart(scan, value % 1000, 3);
  }
  if (digits > 4 || (scan.dates > 0 && scan.separator === COMMA && !layout.hasMonthName)) return false;
  if (layout.isOrdinal && scan.separator === DOT) return false;
  return takeDatePart(scan, value, digits);
}

function takeDatePart(scan: Scan, value: number, digits: number): true {
  scan.dates++;
  if (scan.dates === 1) {
    scan.d1 = value;
    scan.digits1 = digits;
  } else if (scan.dates === 2) {
    scan.d2 = value;
    scan.digits2 = digits;
  } else {
    scan.d3 = value;
    scan.digits3 = digits;
  }
  return true;
}

/** A date, and perhaps a time, without marks between. */
function takeCompact(scan: Scan, value: number, digits: number): boolean {
  if (digits < 8 || digits > 14 || digits % 2 === 1) return false;
  const scale = 10 ** (digits - 8);
  const date = Math.floor(value / scale);
  scan.dates = 1;
  scan.d1 = Math.floor(date / 10_000);
  scan.d2 = Math.floor(date / 100) % 100;
  scan.d3 = date % 100;
  scan.numberAt += 8;
  return digits === 8 || startTime(scan, value - date * scale, digits - 8, NOTHING);
}

/** The first number of a time of day: an hour, or hhmm, or hhmmss. */
function startTime(scan: Scan, value: number, digits: number, mark: number): boolean {
  scan.timeMark = mark;
  scan.timeAt = scan.numberAt;
  scan.hourDigits = digits;
  if (digits <= 2) {
    scan.hour = value;
    scan.times = 1;
  } else if (digits <= 4) {
    scan.hour = Math.floor(value / 100);
    scan.minute = value % 100;
    scan.times = 2;
  } else if (digits <= 6) {
    scan.hour = Math.floor(value / 10_000);
    scan.minute = Math.floor(value / 100) % 100;
    scan.second = value % 100;
    scan.times = 3;
  } else return false;
  return true;
}

/** Minute, second, fraction of a second. */
function takeTimeNumber(scan: Scan, value: number, digits: number): boolean {
  const { times, timeMark } = scan;
  if (times === 3) scan.fractionMs = Math.floor((value * 1000) / 10 ** digits);
  else if (times > 3 || scan.separator !== timeMark || digits > 2 || (timeMark === DOT && digits < 2)) return false;
  else if (times === 1) scan.minute = value;
  else scan.second = value;
  scan.times++;
  return true;
}
