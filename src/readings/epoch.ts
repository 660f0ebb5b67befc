const ZERO = 48;
/** The first second of the year 2100. */
const LAST_SECOND = 4_102_444_800;
const DIGITS = { 'epoch-seconds': 10, 'epoch-milliseconds': 13 } as const;

/**
 * The instant [ms] that a count of seconds (10 digits: 2001 to 2099) or milliseconds (13 digits) since 1970 in UTC says;
 * NaN where the text is none. Shorter counts are not taken: they are as likely an index or the time since a start.
 *
 * @example epochMs('1803891600.5', 'epoch-seconds') // => 1803891600500
 */
export function epochMs(text: string, kind: keyof typeof DIGITS): number {
  let i = 0;
  let end = text.length;
  while (i < end && text.charCodeAt(i) <= 32) i++;
  while (end > i && text.charCodeAt(end - 1) <= 32) end--;
  const wholeEnd = i + DIGITS[kind];
  if (end < wholeEnd || end > wholeEnd + 10 || text.charCodeAt(i) === ZERO) return NaN;
  let value = 0;
  for (; i < wholeEnd; i++) {
    const digit = text.charCodeAt(i) - ZERO;
    if (!(digit >= 0 && digit <= 9)) return NaN;
    value = 10 * value + digit;
  }
  const perSecond = kind === 'epoch-seconds' ? 1 : 1000;
  if (value >= LAST_SECOND * perSecond) return NaN;
  if (i === end) return (value * 1000) / perSecond;
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
