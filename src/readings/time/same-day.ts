import { COLON, ZERO } from './scan/characters.js';
import type { HalfOfDay, Scan } from './scan/scan.js';

/** Stamps that differ in nothing but the digits of hour, minute and second. */
export interface StampPattern {
  /** The text before the hour. */
  readonly prefix: string;
  /** The text behind the last digit of the time. */
  readonly tail: string;
  /** 1: hour; 2: and minute; 3: and second. */
  readonly numbers: number;
  readonly hasColons: boolean;
  /** The half of the day that prefix or tail names. */
  readonly half: HalfOfDay;
}

/** A stamp just scanned, as far as others that differ from it in the digits of the time alone are like it. */
export interface SameDay {
  /** The text before the hour, and that behind the last digit of the time. */
  prefix: string;
  tail: string;
  /** The stamp's instant at midnight, packed; NaN: no other stamp can be read by it. */
  base: number;
  half: HalfOfDay;
  /** The number of digits of a time without marks; 0 for h:mm and h:mm:ss. */
  bareDigits: number;
  /** 1: hour; 2: and minute; 3: and second. */
  numbers: number;
  offsetMinutes: number;
  /** The end of the last time read, and the number of its parts. */
  timeEnd: number;
  timeNumbers: number;
}

/** No stamp has been scanned yet. */
export const newSameDay = (): SameDay => ({
  prefix: '',
  tail: '',
  base: NaN,
  half: 'none',
  bareDigits: 0,
  numbers: 0,
  offsetMinutes: NaN,
  timeEnd: 0,
  timeNumbers: 0,
});

/**
 * The packed stamp of a text that differs from the last one scanned in nothing but the digits of hour, minute and
 * second, as nearly all in a file do; NaN where more differs. It takes a third of the time of a whole scan.
 */
export function readSameDay(day: SameDay, text: string): number {
  const { prefix, tail } = day;
  if (Number.isNaN(day.base) || !text.startsWith(prefix)) return NaN;
  const time = timeFrom(day, text, prefix.length);
  const end = day.timeEnd;
  if (day.timeNumbers !== day.numbers || text.length !== end + tail.length) return NaN;
  for (let i = 0; i < tail.length; i++) if (text.charCodeAt(end + i) !== tail.charCodeAt(i)) return NaN;
  return day.base + time;
}

/** Keeps all but the time of a stamp just scanned; nothing where its time is written in a way not read here. */
export function rememberDay(day: SameDay, text: string, packed: number, scan: Scan): void {
  day.base = NaN;
  if (scan.times < 2) return;
  day.bareDigits = scan.hourDigits > 2 ? scan.hourDigits : 0;
  if (day.bareDigits % 2 === 1) return;
  day.half = scan.half;
  const time = timeFrom(day, text, scan.timeAt);
  if (Number.isNaN(time)) return;
  const date = packed - scan.msOfDay + scan.fractionMs;
  if (date + time !== packed || day.timeNumbers !== Math.min(scan.times, 3)) return;
  day.prefix = text.slice(0, scan.timeAt);
  day.tail = text.slice(day.timeEnd);
  day.numbers = day.timeNumbers;
  day.base = date;
  day.offsetMinutes = scan.offsetMinutes;
}

/** The form of the day's stamps; null where not even those are alike. */
export function likeSameDay({ base, prefix, tail, numbers, bareDigits, half }: SameDay): StampPattern | null {
  return Number.isNaN(base) ? null : { prefix, tail, numbers, hasColons: bareDigits === 0, half };
}

/** The time of day that begins here [ms], NaN for none; sets where it ends and how many numbers it has. */
function timeFrom(day: SameDay, text: string, at: number): number {
  const { bareDigits, half } = day;
  let i = at;
  let hour = text.charCodeAt(i++) - ZERO;
  if (!(hour >= 0 && hour <= 9)) return NaN;
  const next = text.charCodeAt(i) - ZERO;
  if (next >= 0 && next <= 9) {
    hour = 10 * hour + next;
    i++;
  } else if (bareDigits > 0) return NaN;
  let [minute, second] = [0, 0];
  let numbers = 1;
  while (numbers < 3) {
    if (bareDigits > 0 ? 2 * numbers === bareDigits : text.charCodeAt(i) !== COLON) break;
    const mark = bareDigits > 0 ? 0 : 1;
    const tens = text.charCodeAt(i + mark) - ZERO;
    const ones = text.charCodeAt(i + mark + 1) - ZERO;
    if (!(tens >= 0 && tens <= 5 && ones >= 0 && ones <= 9)) return NaN;
    if (numbers === 1) minute = 10 * tens + ones;
    else second = 10 * tens + ones;
    i += mark + 2;
    numbers++;
  }
  day.timeEnd = i;
  day.timeNumbers = numbers;
  if (half === 'pm' && hour < 12) hour += 12;
  else if (half === 'am' && hour >= 12) {
    if (hour > 12) return NaN;
    hour = 0;
  }
  return hour < 24 ? ((hour * 60 + minute) * 60 + second) * 1000 : NaN;
}
