import type { KnownWords } from './word-meaning.js';

/** The number of parts of a stamp's date, and their order. */
export interface Layout {
  readonly dateNumbers: 0 | 1 | 2 | 3;
  readonly hasMonthName: boolean;
  /** One number of 8 to 14 digits, `YYYYMMDD` and what follows. */
  readonly isCompact: boolean;
  /** A year and a day of the year. */
  readonly isOrdinal: boolean;
  /** A time of one or two digits is minutes after midnight, not an hour: `45` in a column of `0 ... 2345`. */
  readonly isHhmm: boolean;
}

export type HalfOfDay = 'none' | 'am' | 'pm';

/** Between the last number and the next stands nothing, or a word; else the code of the mark that does. */
export const NOTHING = 0;
export const WORD = 1;

/**
 * Findings of a stamp's scan. A reader of stamps has one record and uses it again and again, so that a row costs no
 * memory.
 */
export interface Scan {
  /** The number of date parts found so far. */
  dates: number;
  /** Date numbers as written, and their digits. */
  d1: number;
  d2: number;
  d3: number;
  digits1: number;
  digits2: number;
  digits3: number;
  /** 1 to 12 where the month is a word. */
  month: number;
  /** The finest part of the time of day that was written: 0 none, 1 hour, 2 minute, 3 second, 4 fraction. */
  times: number;
  hour: number;
  minute: number;
  second: number;
  fractionMs: number;
  hourDigits: number;
  /** The index in the text at which the hour begins. */
  timeAt: number;
  /** The half of the day that is named. */
  half: HalfOfDay;
  msOfDay: number;
  /** Minutes ahead of UTC, NaN where none is written. */
  offsetMinutes: number;
  /** A name of a zone behind the time; nothing is concluded from it. */
  zoneWord: string | null;

  /** The index at which the last number begins. */
  numberAt: number;
  /** The mark between the last number and the next. */
  separator: number;
  /** The mark between hour and minute: a colon, a dot, or nothing. */
  timeMark: number;
  halfBeforeDate: HalfOfDay;
  /** The month's word means Tuesday too. */
  isTuesdayToo: boolean;
  /** The offset is that of a word for UTC, which a number may still follow. */
  isUniversal: boolean;
  /** The date, or the rest of it, stands behind the time. */
  isDateBehind: boolean;
  readonly knownWords: KnownWords;
}

/** A record for the scans of one reader. */
export const newScan = (): Scan => ({
  dates: 0,
  d1: 0,
  d2: 0,
  d3: 0,
  digits1: 0,
  digits2: 0,
  digits3: 0,
  month: 0,
  times: 0,
  hour: 0,
  minute: 0,
  second: 0,
  fractionMs: 0,
  hourDigits: 0,
  timeAt: 0,
  half: 'none',
  msOfDay: 0,
  offsetMinutes: NaN,
  zoneWord: null,
  numberAt: 0,
  separator: NOTHING,
  timeMark: NOTHING,
  halfBeforeDate: 'none',
  isTuesdayToo: false,
  isUniversal: false,
  isDateBehind: false,
  knownWords: new Map(),
});

/** Makes the record ready for another stamp. */
export function resetScan(scan: Scan): void {
  scan.dates = 0;
  scan.month = 0;
  scan.times = 0;
  scan.hour = 0;
  scan.minute = 0;
  scan.second = 0;
  scan.fractionMs = 0;
  scan.hourDigits = 0;
  scan.half = 'none';
  scan.msOfDay = 0;
  scan.offsetMinutes = NaN;
  scan.zoneWord = null;
  scan.separator = NOTHING;
  scan.timeMark = NOTHING;
  scan.halfBeforeDate = 'none';
  scan.isTuesdayToo = false;
  scan.isUniversal = false;
  scan.isDateBehind = false;
}
