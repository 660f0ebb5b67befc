import { dateMarks, timeMarks } from '../time-words.js';

export const BLANK = 32;
export const QUOTE = 34;
export const APOSTROPHE = 39;
export const OPEN = 40;
export const CLOSE = 41;
export const PLUS = 43;
export const COMMA = 44;
export const DASH = 45;
export const DOT = 46;
export const SLASH = 47;
export const ZERO = 48;
export const NINE = 57;
export const COLON = 58;
export const CAPITAL_T = 84;
export const OPEN_SQUARE = 91;
export const CLOSE_SQUARE = 93;
export const UNDERSCORE = 95;
export const MINUS = 0x2212;
/** Signs of the writings that need no blanks between words stand above this. */
export const FIRST_WIDE = 0x3000;
const TAB = 9;
const NO_BREAK_BLANK = 0xa0;
const EN_DASH = 0x2013;

export const isDigit = (code: number): boolean => code >= ZERO && code <= NINE;
const isWideBlank = (code: number): boolean =>
  code === NO_BREAK_BLANK ||
  (code >= 0x2000 && code <= 0x200f) ||
  code === 0x202f ||
  code === FIRST_WIDE ||
  code === 0xfeff;
export const isBlank = (code: number): boolean => code === BLANK || code === TAB || isWideBlank(code);
export const isLetter = (code: number): boolean =>
  (code >= 97 && code <= 122) ||
  (code >= 65 && code <= 90) ||
  (code > NO_BREAK_BLANK && !isWideBlank(code) && code !== MINUS && code !== EN_DASH);

/** Marks that stand alone between numbers and words without blanks. */
const wideMarks = new Set([...dateMarks, ...timeMarks].map((mark) => mark.charCodeAt(0)).filter((c) => c > FIRST_WIDE));
export const isWideMark = (code: number): boolean => code > FIRST_WIDE && wideMarks.has(code);

const hourMarks = new Set([...timeMarks].map((mark) => mark.charCodeAt(0)));
export const isHourMark = (code: number): boolean => code === COLON || hourMarks.has(code);
