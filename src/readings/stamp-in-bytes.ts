import type { StampPattern } from './read-stamp.js';

/** Reads stamps in bytes that differ from one known in the digits of hour, minute and second alone. */
export interface ByteStamps {
  /**
   * Stamps are read from now on that are like this one.
   *
   * @param packed  What the stamp came to; NaN where it came to nothing.
   * @param pattern How it is written; null: in a way that is not read here.
   */
  learn(stamp: string, packed: number, pattern: StampPattern | null): void;
  /** Reads the stamp that begins here into `into[slot]`. Returns where it ends; -1 where it is unlike the one learnt. */
  read(bytes: Uint8Array, from: number, into: Float64Array, slot: number): number;
}

const ZERO = 48;
const COLON = 58;
const HOUR_MS = 3_600_000;
const NOTHING = new Uint8Array(0);

/** A reader that has learnt no stamp yet. */
export function stampsInBytes(): ByteStamps {
  let prefix: Uint8Array = NOTHING;
  let tail: Uint8Array = NOTHING;
  let [hasColons, hourDigits, hasSeconds] = [true, 2, false];
  /** Hours beyond noon are written as those before it where prefix or tail names the half of the day. */
  let [leastHour, mostHour] = [0, -1];
  let base = NaN;

  function read(bytes: Uint8Array, from: number, into: Float64Array, slot: number): number {
    let i = startsAt(bytes, from, prefix);
    if (i < 0) return -1;
    let hour = bytes[i++]! - ZERO;
    if (!(hour >= 0 && hour <= 9)) return -1;
    if (hourDigits === 2) {
      const ones = bytes[i++]! - ZERO;
      if (!(ones >= 0 && ones <= 9)) return -1;
      hour = 10 * hour + ones;
    }
    if (hour < leastHour || hour > mostHour) return -1;
    if (hasColons && bytes[i++] !== COLON) return -1;
    const minute = sixtieth(bytes, i);
    i += 2;
    if (minute < 0) return -1;
    let second = 0;
    if (hasSeconds) {
      if (hasColons && bytes[i++] !== COLON) return -1;
      second = sixtieth(bytes, i);
      i += 2;
      if (second < 0) return -1;
    }
    i = startsAt(bytes, i, tail);
    if (i < 0) return -1;
    into[slot] = base + ((hour * 60 + minute) * 60 + second) * 1000;
    return i;
  }

  return {
    learn(stamp, packed, pattern) {
      mostHour = -1;
      if (Number.isNaN(packed) || !pattern || !stamp.startsWith(pattern.prefix) || !isAscii(stamp)) return;
      prefix = bytesOf(pattern.prefix);
      tail = bytesOf(pattern.tail);
      hasColons = pattern.hasColons;
      hasSeconds = pattern.numbers === 3;
      hourDigits = hasColons && stamp[prefix.length + 1] === ':' ? 1 : 2;
      [leastHour, mostHour, base] = [0, 23, 0];
      const time = new Float64Array(1);
      const end = read(bytesOf(`${stamp}\n`), 0, time, 0);
      const [timeMs] = time as unknown as [number];
      base = packed - timeMs;
      const hour = Math.floor(timeMs / HOUR_MS);
      if (pattern.half !== 'none') [leastHour, mostHour] = hour < 12 ? [0, 11] : [12, 12];
      if (end !== stamp.length || hour > mostHour) mostHour = -1;
    },
    read,
  };
}

/** Where these bytes end, if they stand here; -1 where others do. */
function startsAt(bytes: Uint8Array, from: number, wanted: Uint8Array): number {
  for (let i = 0; i < wanted.length; i++) if (bytes[from + i] !== wanted[i]) return -1;
  return from + wanted.length;
}

/** Two digits of a minute or a second; below 0 where there are none. */
function sixtieth(bytes: Uint8Array, at: number): number {
  const tens = bytes[at]! - ZERO;
  const ones = bytes[at + 1]! - ZERO;
  return tens >= 0 && tens <= 5 && ones >= 0 && ones <= 9 ? 10 * tens + ones : -1;
}

const isAscii = (text: string): boolean => /^[\x20-\x7e]*$/.test(text);
const bytesOf = (text: string): Uint8Array => Uint8Array.from(text, (one) => one.charCodeAt(0));
