import { afternoonLetters, morningLetters, noonLetters } from '../time-words.js';
import { CAPITAL_T, COLON, DOT, FIRST_WIDE, isBlank, isLetter, isWideMark, SLASH } from './characters.js';
import { type HalfOfDay, type Layout, type Scan, WORD } from './scan.js';
import {
  AFTERNOON,
  IDLE,
  MARCH_OR_TUESDAY,
  MORNING,
  MORNING_OR_OF,
  TIME_MARK,
  UNIVERSAL,
  UNKNOWN,
  wordMeaning,
  ZONE,
} from './word-meaning.js';

/** Takes a word in; returns where the text goes on, or -1 where such a word stands in no stamp. */
export function takeWord(scan: Scan, text: string, from: number, layout: Layout): number {
  const to = wordEnd(text, from);
  const isDateWhole = scan.dates === layout.dateNumbers;
  const isInDate = scan.dates > 0 && !isDateWhole && scan.times === 0;
  if (to === from + 1) {
    const after = takeLetter(scan, text, from, isInDate);
    if (after !== 0) return after;
  }
  const word = text.slice(from, to);
  const meaning = wordMeaning(word, scan.knownWords);
  const isTimeBegun = scan.times > 0;
  let isTaken = true;
  switch (meaning) {
    case UNKNOWN:
      if (text.charCodeAt(to) !== SLASH || !isTimeBegun || !isDateWhole) return -1;
      scan.zoneWord = text.slice(from).trim();
      return text.length;
    case TIME_MARK:
      if (scan.times === 1) scan.timeMark = COLON;
      scan.separator = COLON;
      return isTimeBegun ? to : -1;
    case UNIVERSAL:
      isTaken = isTimeBegun && Number.isNaN(scan.offsetMinutes);
      scan.offsetMinutes = 0;
      scan.isUniversal = true;
      break;
    case ZONE:
      isTaken = isTimeBegun;
      scan.zoneWord ??= word;
      break;
    case MORNING:
    case AFTERNOON:
      isTaken = takeHalf(scan, meaning === MORNING ? 'am' : 'pm', isDateWhole && scan.dates > 0);
      break;
    case MORNING_OR_OF:
      if (isDateWhole || text.charCodeAt(to) === DOT) isTaken = takeHalf(scan, 'am', isDateWhole && scan.dates > 0);
      else isTaken = layout.hasMonthName;
      break;
    case IDLE:
      isTaken = !isInDate || layout.hasMonthName || word.charCodeAt(0) > FIRST_WIDE;
      break;
    default:
      isTaken = takeMonth(scan, meaning, layout);
  }
  scan.separator = WORD;
  return isTaken ? to : -1;
}

function wordEnd(text: string, from: number): number {
  let to = from + 1;
  if (isWideMark(text.charCodeAt(from))) return to;
  while (isLetter(text.charCodeAt(to)) && !isWideMark(text.charCodeAt(to))) to++;
  return to;
}

/** Letters that stand alone: `T`, a.m., `12:30a`. Where the text goes on, -1 for no stamp, 0 for a word like others. */
function takeLetter(scan: Scan, text: string, at: number, isInDate: boolean): number {
  if (text.charCodeAt(at) === CAPITAL_T && !isInDate) {
    scan.separator = WORD;
    return at + 1;
  }
  const letter = text[at]!.toLowerCase();
  const isMorning = morningLetters.includes(letter);
  if (!isMorning && !afternoonLetters.includes(letter)) return 0;
  let i = at + 1;
  while (text.charCodeAt(i) === DOT || isBlank(text.charCodeAt(i))) i++;
  const isPair =
    i > at + 1 && i < text.length && noonLetters.includes(text[i]!.toLowerCase()) && !isLetter(text.charCodeAt(i + 1));
  if (!isPair && (scan.times === 0 || (letter !== 'a' && letter !== 'p'))) return 0;
  if (!takeHalf(scan, isMorning ? 'am' : 'pm', scan.dates > 0)) return -1;
  scan.separator = WORD;
  return isPair ? i + 1 : at + 1;
}

function takeHalf(scan: Scan, half: HalfOfDay, hasDate: boolean): boolean {
  if (scan.times === 0 && !hasDate) scan.halfBeforeDate = half;
  else if (scan.half !== 'none') return false;
  else scan.half = half;
  return true;
}

function takeMonth(scan: Scan, meaning: number, layout: Layout): boolean {
  if (!layout.hasMonthName) return meaning === MARCH_OR_TUESDAY && scan.dates === 0;
  if (scan.month > 0 && !scan.isTuesdayToo) return false;
  scan.isTuesdayToo = meaning === MARCH_OR_TUESDAY && scan.month === 0;
  scan.month = meaning === MARCH_OR_TUESDAY ? 3 : meaning;
  return true;
}
