import {
  afternoonLetters,
  afternoonWords,
  dateMarks,
  idleWords,
  marchOrTuesday,
  monthWords,
  morningLetters,
  morningOrOf,
  morningWords,
  noonLetters,
  timeMarks,
  universalWords,
  zoneWords,
} from './time-words.js';

/** How many numbers make up the date in a stamp, and how they are to be taken. */
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

/** What the last scan found. One record is used again and again, so that a row costs no memory. */
export const found = {
  dates: 0,
  /** Date numbers as written, and their digits. */
  d1: 0,
  d2: 0,
  d3: 0,
  digits1: 0,
  digits2: 0,
  digits3: 0,
  /** 1 to 12 where the month is a word. */
  month: 0,
  /** How much of the time of day was written: 0 none, 1 hour, 2 minute, 3 second, 4 fraction. */
  times: 0,
  hourDigits: 0,
  /** Where in the text the hour begins. */
  timeAt: 0,
  fractionMs: 0,
  half: 'none' as 'none' | 'am' | 'pm',
  msOfDay: 0,
  /** Minutes ahead of UTC, NaN where none is written. */
  offsetMinutes: NaN,
  /** A name of a zone behind the time; nothing is concluded from it. */
  zoneWord: null as string | null,
};

const MOST_CHARACTERS = 80;
const TAB = 9;
const BLANK = 32;
const QUOTE = 34;
const APOSTROPHE = 39;
const OPEN = 40;
const CLOSE = 41;
const PLUS = 43;
const COMMA = 44;
const DASH = 45;
const DOT = 46;
const SLASH = 47;
const ZERO = 48;
const NINE = 57;
const COLON = 58;
const CAPITAL_T = 84;
const OPEN_SQUARE = 91;
const CLOSE_SQUARE = 93;
const UNDERSCORE = 95;
const NO_BREAK_BLANK = 0xa0;
const MINUS = 0x2212;
const EN_DASH = 0x2013;
/** Signs of the writings that need no blanks between words stand above this. */
const FIRST_WIDE = 0x3000;
/** Between the last number and the next stands nothing, or a word. */
const NOTHING = 0;
const WORD = 1;

const isDigit = (code: number): boolean => code >= ZERO && code <= NINE;
const isWideBlank = (code: number): boolean =>
  code === NO_BREAK_BLANK ||
  (code >= 0x2000 && code <= 0x200f) ||
  code === 0x202f ||
  code === FIRST_WIDE ||
  code === 0xfeff;
const isBlank = (code: number): boolean => code === BLANK || code === TAB || isWideBlank(code);
const isLetter = (code: number): boolean =>
  (code >= 97 && code <= 122) ||
  (code >= 65 && code <= 90) ||
  (code > NO_BREAK_BLANK && !isWideBlank(code) && code !== MINUS && code !== EN_DASH);

/** What a word says: a month (1 to 12), or one of these. */
const IDLE = 20;
const MORNING = 21;
const AFTERNOON = 22;
const UNIVERSAL = 23;
const ZONE = 24;
const TIME_MARK = 25;
const MARCH_OR_TUESDAY = 26;
const MORNING_OR_OF = 27;
const UNKNOWN = 99;

const fold = (word: string): string =>
  word
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase();
const listed: readonly (readonly [string, number])[] = [
  ...monthWords.map((words, i) => [words, i + 1] as const),
  [idleWords, IDLE],
  [morningWords, MORNING],
  [afternoonWords, AFTERNOON],
  [universalWords, UNIVERSAL],
  [zoneWords, ZONE],
  [[...timeMarks].join(' '), TIME_MARK],
  [[...dateMarks].join(' '), IDLE],
  [marchOrTuesday, MARCH_OR_TUESDAY],
  [morningOrOf, MORNING_OR_OF],
];
const sayings = new Map(listed.flatMap(([words, saying]) => words.split(' ').map((word) => [fold(word), saying])));
/** Words as written, with what they say: the same few come back in every row. */
const known = new Map<string, number>();
const MOST_KNOWN = 1000;
/** A longer piece of a text keeps all of the text in memory. */
const MOST_KNOWN_LETTERS = 12;

function sayingOf(word: string): number {
  if (word.length > MOST_KNOWN_LETTERS) return sayings.get(fold(word)) ?? UNKNOWN;
  let saying = known.get(word);
  if (saying === undefined) {
    saying = sayings.get(fold(word)) ?? UNKNOWN;
    if (known.size >= MOST_KNOWN) known.clear();
    known.set(word, saying);
  }
  return saying;
}

/** Marks that stand alone between numbers and words without blanks. */
const wideMarks = new Set([...dateMarks, ...timeMarks].map((mark) => mark.charCodeAt(0)).filter((c) => c > FIRST_WIDE));
const isWideMark = (code: number): boolean => code > FIRST_WIDE && wideMarks.has(code);
const hourMarks = new Set([...timeMarks].map((mark) => mark.charCodeAt(0)));

let numberAt = 0;
let hour = 0;
let minute = 0;
let second = 0;
let fractionMs = 0;
/** What parts hour and minute: a colon or a dot, or nothing. */
let timeMark = NOTHING;
let separator = NOTHING;
let half = NOTHING;
let halfBeforeDate = NOTHING;
let isTuesdayToo = false;
let isUniversal = false;
/** The date, or the rest of it, stands behind the time. */
let isDateBehind = false;

/**
 * Takes a stamp apart into `found`; false where the text is no stamp of this layout. Which date number is the day is not
 * settled here, nor whether there is such a day.
 *
 * @param text - any text
 * @param layout - what the column's stamps look like
 */
export function scanStamp(text: string, layout: Layout): boolean {
  const end = text.length;
  if (end > MOST_CHARACTERS) return false;
  reset();
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
      numberAt = from;
      if (!takeNumber(value, i - from, digit, i + 1 < end ? text.charCodeAt(i + 1) : 0, layout)) return false;
      separator = NOTHING;
    } else if (code === COLON || code === SLASH || code === DOT || code === COMMA || code === UNDERSCORE) {
      if (isAtStart()) return false;
      if (separator !== WORD) separator = code;
      i++;
    } else if (code === BLANK || code === TAB || code === QUOTE || code === APOSTROPHE || isWideBlank(code)) {
      if (found.dates + found.times > 0 && separator !== WORD) separator = BLANK;
      i++;
    } else if (code === DASH || code === PLUS || code === MINUS) {
      if (isDigit(text.charCodeAt(i + 1)) && mayCarryOffset(code)) {
        i = takeOffset(text, i);
        if (i < 0) return false;
      } else {
        if (code !== DASH || isAtStart()) return false;
        separator = DASH;
        i++;
      }
    } else if (isLetter(code)) {
      i = takeWord(text, i, layout);
      if (i < 0) return false;
    } else if (code === OPEN || code === OPEN_SQUARE) {
      if (found.times > 0 && found.dates === layout.dateNumbers) {
        found.zoneWord ??= text.slice(i + 1).replace(/[)\]\s]+$/, '');
        break;
      }
      i++;
    } else if (code === CLOSE || code === CLOSE_SQUARE) i++;
    else return false;
  }
  return isWhole(layout) && takeTime();
}

/** No number and no word yet: a sign or a mark here is a number's own. */
const isAtStart = (): boolean => found.dates === 0 && found.times === 0 && separator !== WORD;

function reset(): void {
  found.dates = 0;
  found.month = 0;
  found.times = 0;
  found.hourDigits = 0;
  found.msOfDay = 0;
  found.offsetMinutes = NaN;
  found.zoneWord = null;
  hour = 0;
  minute = 0;
  second = 0;
  fractionMs = 0;
  timeMark = NOTHING;
  separator = NOTHING;
  half = NOTHING;
  halfBeforeDate = NOTHING;
  isTuesdayToo = false;
  isUniversal = false;
  isDateBehind = false;
}

/** Gives a number its place; false where there is none for it. */
function takeNumber(value: number, digits: number, next: number, afterNext: number, layout: Layout): boolean {
  const { times, dates } = found;
  if (times > 0) {
    if (isDateBehind && dates < layout.dateNumbers) return takeDateNumber(value, digits, layout);
    if (separator === COLON || separator === DOT || separator === COMMA) return takeTimeNumber(value, digits);
    if (dates === layout.dateNumbers || (separator !== BLANK && separator !== WORD)) return false;
    isDateBehind = true;
    return takeDateNumber(value, digits, layout);
  }
  const startsClock = digits <= 2 && (next === COLON || hourMarks.has(next));
  const mayStart = dates === 0 || dates === layout.dateNumbers || layout.hasMonthName;
  if (startsClock && mayStart) return startTime(value, digits, COLON);
  // A date without its year: the hour must not be taken for it.
  if (startsClock && separator === BLANK) return false;
  if (dates < layout.dateNumbers) return takeDateNumber(value, digits, layout);
  if (separator === DOT || separator === SLASH || separator === DASH) return false;
  const hasDot = next === DOT && isDigit(afterNext) && digits <= 2 && (dates > 0 || separator === WORD);
  return startTime(value, digits, hasDot ? DOT : NOTHING);
}

function takeDateNumber(value: number, digits: number, layout: Layout): boolean {
  if (layout.isCompact) return takeCompact(value, digits);
  if (layout.isOrdinal && digits === 7 && found.dates === 0) {
    return takeDatePart(Math.floor(value / 1000), 4) && takeDatePart(value % 1000, 3);
  }
  if (digits > 4 || (found.dates > 0 && separator === COMMA && !layout.hasMonthName)) return false;
  if (layout.isOrdinal && separator === DOT) return false;
  return takeDatePart(value, digits);
}

function takeDatePart(value: number, digits: number): true {
  found.dates++;
  if (found.dates === 1) {
    found.d1 = value;
    found.digits1 = digits;
  } else if (found.dates === 2) {
    found.d2 = value;
    found.digits2 = digits;
  } else {
    found.d3 = value;
    found.digits3 = digits;
  }
  return true;
}

function takeCompact(value: number, digits: number): boolean {
  if (digits < 8 || digits > 14 || digits % 2 === 1) return false;
  const scale = 10 ** (digits - 8);
  const date = Math.floor(value / scale);
  found.dates = 1;
  found.d1 = Math.floor(date / 10_000);
  found.d2 = Math.floor(date / 100) % 100;
  found.d3 = date % 100;
  numberAt += 8;
  return digits === 8 || startTime(value - date * scale, digits - 8, NOTHING);
}

/** The first number of a time of day: an hour, or hhmm, or hhmmss. */
function startTime(value: number, digits: number, mark: number): boolean {
  timeMark = mark;
  found.timeAt = numberAt;
  found.hourDigits = digits;
  if (digits <= 2) {
    hour = value;
    found.times = 1;
  } else if (digits <= 4) {
    hour = Math.floor(value / 100);
    minute = value % 100;
    found.times = 2;
  } else if (digits <= 6) {
    hour = Math.floor(value / 10_000);
    minute = Math.floor(value / 100) % 100;
    second = value % 100;
    found.times = 3;
  } else return false;
  return true;
}

/** Minute, second, fraction of a second. */
function takeTimeNumber(value: number, digits: number): boolean {
  if (found.times === 3) fractionMs = Math.floor((value * 1000) / 10 ** digits);
  else if (found.times > 3 || separator !== timeMark || digits > 2 || (timeMark === DOT && digits < 2)) return false;
  else if (found.times === 1) minute = value;
  else second = value;
  found.times++;
  return true;
}

/**
 * A dash is an offset's sign only behind a minute: in `2027-05-01-10` and `10-00-00` it parts numbers. Behind a bare
 * number it is none: `2027-05` is a month.
 */
const mayCarryOffset = (sign: number): boolean =>
  isUniversal ||
  (found.zoneWord === null &&
    (found.dates > 0 || timeMark !== NOTHING) &&
    (found.times >= 2 || (found.times === 1 && sign === PLUS)));

/** Reads `+02:00`, `-0930`, `+2`; gives where the text goes on, or -1. */
function takeOffset(text: string, at: number): number {
  if (!Number.isNaN(found.offsetMinutes) && !isUniversal) return -1;
  isUniversal = false;
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
  if (offset > 14 * 60 || minutes > 59) return -1;
  found.offsetMinutes = text.charCodeAt(at) === PLUS || offset === 0 ? offset : -offset;
  return i;
}

/** Takes a word in; gives where the text goes on, or -1 where such a word stands in no stamp. */
function takeWord(text: string, from: number, layout: Layout): number {
  let to = from + 1;
  if (!isWideMark(text.charCodeAt(from))) {
    while (isLetter(text.charCodeAt(to)) && !isWideMark(text.charCodeAt(to))) to++;
  }
  const isDateWhole = found.dates === layout.dateNumbers;
  const isInDate = found.dates > 0 && !isDateWhole && found.times === 0;
  if (to === from + 1) {
    const after = takeLetter(text, from, isInDate);
    if (after !== 0) return after;
  }
  const word = text.slice(from, to);
  const saying = sayingOf(word);
  const isTimeBegun = found.times > 0;
  let isTaken = true;
  switch (saying) {
    case UNKNOWN:
      if (text.charCodeAt(to) !== SLASH || !isTimeBegun || !isDateWhole) return -1;
      found.zoneWord = text.slice(from).trim();
      return text.length;
    case TIME_MARK:
      if (found.times === 1) timeMark = COLON;
      separator = COLON;
      return isTimeBegun ? to : -1;
    case UNIVERSAL:
      isTaken = isTimeBegun && Number.isNaN(found.offsetMinutes);
      found.offsetMinutes = 0;
      isUniversal = true;
      break;
    case ZONE:
      isTaken = isTimeBegun;
      found.zoneWord ??= word;
      break;
    case MORNING:
    case AFTERNOON:
      isTaken = takeHalf(saying, isDateWhole && found.dates > 0);
      break;
    case MORNING_OR_OF:
      if (isDateWhole || text.charCodeAt(to) === DOT) isTaken = takeHalf(MORNING, isDateWhole && found.dates > 0);
      else isTaken = layout.hasMonthName;
      break;
    case IDLE:
      isTaken = !isInDate || layout.hasMonthName || word.charCodeAt(0) > FIRST_WIDE;
      break;
    default:
      isTaken = takeMonth(saying, layout);
  }
  separator = WORD;
  return isTaken ? to : -1;
}

/** Letters that stand alone: `T`, a.m., `12:30a`. Where the text goes on, -1 for no stamp, 0 for a word like others. */
function takeLetter(text: string, at: number, isInDate: boolean): number {
  if (text.charCodeAt(at) === CAPITAL_T && !isInDate) {
    separator = WORD;
    return at + 1;
  }
  const letter = text[at]!.toLowerCase();
  const isMorning = morningLetters.includes(letter);
  if (!isMorning && !afternoonLetters.includes(letter)) return 0;
  let i = at + 1;
  while (text.charCodeAt(i) === DOT || isBlank(text.charCodeAt(i))) i++;
  const isPair =
    i > at + 1 && i < text.length && noonLetters.includes(text[i]!.toLowerCase()) && !isLetter(text.charCodeAt(i + 1));
  if (!isPair && (found.times === 0 || (letter !== 'a' && letter !== 'p'))) return 0;
  if (!takeHalf(isMorning ? MORNING : AFTERNOON, found.dates > 0)) return -1;
  separator = WORD;
  return isPair ? i + 1 : at + 1;
}

function takeHalf(saying: number, hasDate: boolean): boolean {
  if (found.times === 0 && !hasDate) halfBeforeDate = saying;
  else if (half !== NOTHING) return false;
  else half = saying;
  return true;
}

function takeMonth(saying: number, layout: Layout): boolean {
  if (!layout.hasMonthName) return saying === MARCH_OR_TUESDAY && found.dates === 0;
  if (found.month > 0 && !isTuesdayToo) return false;
  isTuesdayToo = saying === MARCH_OR_TUESDAY && found.month === 0;
  found.month = saying === MARCH_OR_TUESDAY ? 3 : saying;
  return true;
}

/** Is everything there that the layout asks for? */
function isWhole(layout: Layout): boolean {
  if (found.dates !== layout.dateNumbers || (layout.hasMonthName && found.month === 0)) return false;
  // In front of a date "am" is German for "on"; in front of a time alone it is the half of the day.
  if (halfBeforeDate !== NOTHING) {
    if (half === NOTHING && found.dates === 0) half = halfBeforeDate;
    else if (halfBeforeDate === AFTERNOON) return false;
  }
  if (layout.isOrdinal) {
    if (layout.isHhmm && found.times === 1 && timeMark === NOTHING) {
      minute = hour;
      hour = 0;
    }
    return found.digits1 === 4 && found.digits2 <= 3 && (found.digits2 === 3 || found.hourDigits > 2);
  }
  if (layout.dateNumbers > 0 || half !== NOTHING) return true;
  return found.times > 1 && (timeMark !== NOTHING || found.hourDigits === 4 || found.hourDigits === 6);
}

function takeTime(): boolean {
  if (half === AFTERNOON && hour < 12) hour += 12;
  else if (half === MORNING) {
    if (hour > 12) return false;
    if (hour === 12) hour = 0;
  }
  if (hour > 24 || minute > 59 || second > 60 || (half !== NOTHING && found.times === 0)) return false;
  if (hour === 24 && (minute > 0 || second > 0 || fractionMs > 0)) return false;
  found.half = half === NOTHING ? 'none' : half === MORNING ? 'am' : 'pm';
  found.fractionMs = fractionMs;
  found.msOfDay = ((hour * 60 + minute) * 60 + second) * 1000 + fractionMs;
  return true;
}
