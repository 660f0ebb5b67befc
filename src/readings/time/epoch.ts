const ZERO = 48;
/** The first second of the year 2100. */
const LAST_SECOND = 4_102_444_800;
/** Kinds of counts since 1970: how many digits they have from 2001 to 2099, and how many make a second. */
const COUNTS = {
  'epoch-seconds': { digits: 10, perSecond: 1 },
  'epoch-milliseconds': { digits: 13, perSecond: 1e3 },
  'epoch-microseconds': { digits: 16, perSecond: 1e6 },
  'epoch-nanoseconds': { digits: 19, perSecond: 1e9 },
} as const;
export type EpochKind = keyof typeof COUNTS;
export const epochKinds = Object.keys(COUNTS) as EpochKind[];

/**
 * The instant [ms] that a count of seconds or of smaller parts since 1970 in UTC says; NaN where the text is none. Shorter counts are not taken: they are as likely an index or the time since a start.
 *
 * @example epochMs('1803891600.5', 'epoch-seconds') // => 1803891600500
 */
export function epochMs(text: string, kind: EpochKind): number {
  const { digits, perSecond } = COUNTS[kind];
  let i = 0;
  let end = text.length;
  while (i < end && text.charCodeAt(i) <= 32) i++;
  while (end > i && text.charCodeAt(end - 1) <= 32) end--;
  const wholeEnd = i + digits;
  if (end < wholeEnd || end > wholeEnd + 10 || text.charCodeAt(i) === ZERO) return NaN;
  let value = 0;
  for (; i < wholeEnd; i++) {
    const digit = text.charCodeAt(i) - ZERO;
    if (!(digit >= 0 && digit <= 9)) return NaN;
    value = 10 * value + digit;
  }
  if (value >= LAST_SECOND * perSecond) return NaN;
  // Nineteen digits are more than a double holds, by some 100 ns.
  if (i === end) return perSecond > 1000 ? Math.round(value / (perSecond / 1000)) : (value * 1000) / perSecond;
  if (text.charCodeAt(i) !== 46 && text.charCodeAt(i) !== 44) return NaN;
  let part = 0;
  let scale = 1;
  for (i++; i < end; i++) {
    const digit = text.charCodeAt(i) - ZERO;
    if (!(digit >= 0 && digit <= 9)) return NaN;
    part = 10 * part + digit;
    scale *= 10;
  }
  return Math.floor((value * 1000 + (part * 1000) / scale) / perSecond);
}
