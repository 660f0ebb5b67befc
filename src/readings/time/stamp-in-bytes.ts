import type { StampPattern } from './same-day.js';

/** A stamp that others are like: they differ from it in the digits of hour, minute and second alone. */
export interface KnownStamp {
  /** Length of such a stamp [bytes]. */
  readonly length: number;
  /** All its bytes, four in one; the last four may overlap those before. The digits of the time are left out. */
  readonly words: Int32Array;
  /** Mask for comparing words: bits of the digits are 0. */
  readonly masks: Int32Array;
  readonly hourAt: number;
  readonly hourDigits: 1 | 2;
  readonly minuteAt: number;
  /** 0: it has no second. */
  readonly secondAt: number;
  /** Hours beyond noon are written as those before it where the stamp names the half of the day. */
  readonly leastHour: number;
  readonly mostHour: number;
  /** Time of a stamp of its hour 0 [ms]. */
  readonly baseMs: number;
}

const ZERO = 48;
const TWO_ZEROS = 0x3030;
const HOUR_MS = 3_600_000;
const WORD_BYTES = 4;

/**
 * What a stamp says of others like it; null where they cannot be read by their digits alone.
 *
 * @param stamp   ASCII.
 * @param ms      What it comes to; NaN where it comes to nothing.
 * @param pattern How it is written; null: in a way that is not read here.
 */
export function knownStamp(stamp: string, ms: number, pattern: StampPattern | null): KnownStamp | null {
  if (Number.isNaN(ms) || !pattern || pattern.numbers < 2 || !stamp.startsWith(pattern.prefix)) return null;
  const colon = pattern.hasColons ? 1 : 0;
  const hourAt = pattern.prefix.length;
  const hourDigits = pattern.hasColons && stamp[hourAt + 1] === ':' ? 1 : 2;
  const minuteAt = hourAt + hourDigits + colon;
  const secondAt = pattern.numbers === 3 ? minuteAt + 2 + colon : 0;
  const { length } = stamp;
  if (length !== Math.max(minuteAt, secondAt) + 2 + pattern.tail.length || length < WORD_BYTES) return null;

  const bytes = Uint8Array.from(stamp, (one) => one.charCodeAt(0));
  const compared = new Uint8Array(length).fill(0xff);
  compared.fill(0, hourAt, hourAt + hourDigits).fill(0, minuteAt, minuteAt + 2);
  if (secondAt > 0) compared.fill(0, secondAt, secondAt + 2);
  const masks = wordsOf(compared);
  const words = wordsOf(bytes).map((word, i) => word & masks[i]!);
  const knownFor = (leastHour: number, mostHour: number, baseMs: number): KnownStamp => {
    const most = hourDigits === 1 ? Math.min(9, mostHour) : mostHour;
    return { length, words, masks, hourAt, hourDigits, minuteAt, secondAt, leastHour, mostHour: most, baseMs };
  };
  const timeMs = timeInBytes(viewOf(bytes), 0, knownFor(0, 23, ms));
  if (timeMs < 0) return null;
  if (pattern.half === 'none') return knownFor(0, 23, ms - timeMs);
  const hour = Math.floor(timeMs / HOUR_MS);
  if (hour > 12) return null;
  return hour < 12 ? knownFor(0, 11, ms - timeMs) : knownFor(12, 12, ms - timeMs);
}

/**
 * The time of the day that a stamp says which begins here [ms]; -1 where it is unlike the known one.
 *
 * @param from So many bytes as the known stamp has must follow.
 */
export function timeInBytes(view: DataView, from: number, known: KnownStamp): number {
  const { words, masks, length } = known;
  const last = words.length - 1;
  for (let i = 0; i < last; i++) if ((view.getInt32(from + WORD_BYTES * i) & masks[i]!) !== words[i]) return -1;
  if ((view.getInt32(from + length - WORD_BYTES) & masks[last]!) !== words[last]) return -1;
  const hourAt = from + known.hourAt;
  const hour = known.hourDigits === 2 ? twoDigits(view, hourAt) : view.getUint8(hourAt) - ZERO;
  const minute = twoDigits(view, from + known.minuteAt);
  const second = known.secondAt === 0 ? 0 : twoDigits(view, from + known.secondAt);
  if (hour < known.leastHour || hour > known.mostHour || minute < 0 || minute > 59 || second < 0 || second > 59) {
    return -1;
  }
  return ((hour * 60 + minute) * 60 + second) * 1000;
}

/** The number that two digits make; below 0 or above 99 where there are none. */
function twoDigits(view: DataView, at: number): number {
  const both = view.getUint16(at) - TWO_ZEROS;
  const ones = both & 0xff;
  return ones <= 9 ? 10 * (both >> 8) + ones : -1;
}

function wordsOf(bytes: Uint8Array): Int32Array {
  const view = viewOf(bytes);
  const words = new Int32Array(Math.ceil(bytes.length / WORD_BYTES));
  return words.map((_, i) => view.getInt32(Math.min(WORD_BYTES * i, bytes.length - WORD_BYTES)));
}

export const viewOf = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
