import { dateCode } from './date-code.js';
import { type EpochKind, epochMs } from './epoch.js';
import { found, scanStamp } from './scan-stamp.js';
import { type StampForm, writingOf } from './stamp-form.js';

/** Room for a day's milliseconds in a packed stamp; more than a day, so that 24:00 stays with its date. */
export const DATE_SLOT = 100_000_000;

/** Reads the stamps of one column, millions of them. */
export interface StampReader {
  /**
   * A stamp as dateCode * DATE_SLOT + milliseconds of the day (0 to 86,400,000), of which `wallOf` makes a wall clock's
   * time once the order of day and month is known. dateCode is p1 * 10,000 + p2 * 100 + p3: the parts of the date in the
   * order written, but a year of four digits first; year, month, day where the form leaves no doubt; 0 for a time of day
   * alone. Of a count since 1970 it is the instant itself [ms]. NaN where the text is no stamp of the form.
   */
  read(text: string): number;
  /** Minutes ahead of UTC that the stamp read last carried, NaN if none. */
  offsetMinutes: number;
  /** How the stamps like the one read last are written; null where not even those of its day are alike. */
  likeLast(): StampPattern | null;
}

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
  readonly half: 'none' | 'am' | 'pm';
}

/**
 * A reader of stamps of one form.
 *
 * @param form - as `stampFormOf` found it
 */
export function stampReader(form: StampForm): StampReader {
  if (form.kind.startsWith('epoch')) {
    const kind = form.kind as EpochKind;
    return { read: (text) => epochMs(text, kind), offsetMinutes: 0, likeLast: () => null };
  }
  const { layout, style } = writingOf(form);
  const again = sameDayReader();
  const reader: StampReader = {
    offsetMinutes: NaN,
    likeLast: again.pattern,
    read(text) {
      const quick = again.read(text);
      if (!Number.isNaN(quick)) {
        reader.offsetMinutes = again.offsetMinutes;
        return quick;
      }
      if (!scanStamp(text, layout)) return noStamp(reader);
      const code = style === null ? 0 : dateCode(style);
      if (Number.isNaN(code)) return noStamp(reader);
      const packed = code * DATE_SLOT + found.msOfDay;
      again.remember(text, packed);
      reader.offsetMinutes = found.offsetMinutes;
      return packed;
    },
  };
  return reader;
}

function noStamp(reader: StampReader): number {
  reader.offsetMinutes = NaN;
  return NaN;
}

const ZERO = 48;
const COLON = 58;

/**
 * Reads stamps that differ from the last one in nothing but the digits of hour, minute and second, as nearly all in a
 * file do; NaN where more differs. It takes a third of the time of a whole scan.
 */
function sameDayReader() {
  let [prefix, tail, base] = ['', '', NaN];
  let half: typeof found.half = 'none';
  /** How many digits the time has without marks; 0 where it is h:mm or h:mm:ss. */
  let bareDigits = 0;
  let numbers = 0;
  let [end, parts] = [0, 0];

  /** The time of day that begins here [ms], NaN for none; sets where it ends and how many numbers it has. */
  function timeFrom(text: string, at: number): number {
    let i = at;
    let hour = text.charCodeAt(i++) - ZERO;
    if (!(hour >= 0 && hour <= 9)) return NaN;
    const next = text.charCodeAt(i) - ZERO;
    if (next >= 0 && next <= 9) {
      hour = 10 * hour + next;
      i++;
    } else if (bareDigits > 0) return NaN;
    let [minute, second] = [0, 0];
    parts = 1;
    while (parts < 3) {
      if (bareDigits > 0 ? 2 * parts === bareDigits : text.charCodeAt(i) !== COLON) break;
      const mark = bareDigits > 0 ? 0 : 1;
      const tens = text.charCodeAt(i + mark) - ZERO;
      const ones = text.charCodeAt(i + mark + 1) - ZERO;
      if (!(tens >= 0 && tens <= 5 && ones >= 0 && ones <= 9)) return NaN;
      if (parts === 1) minute = 10 * tens + ones;
      else second = 10 * tens + ones;
      i += mark + 2;
      parts++;
    }
    end = i;
    if (half === 'pm' && hour < 12) hour += 12;
    else if (half === 'am' && hour >= 12) {
      if (hour > 12) return NaN;
      hour = 0;
    }
    return hour < 24 ? ((hour * 60 + minute) * 60 + second) * 1000 : NaN;
  }

  const again = {
    offsetMinutes: NaN,
    read(text: string): number {
      if (Number.isNaN(base) || !text.startsWith(prefix)) return NaN;
      const time = timeFrom(text, prefix.length);
      if (parts !== numbers || text.length !== end + tail.length) return NaN;
      for (let i = 0; i < tail.length; i++) if (text.charCodeAt(end + i) !== tail.charCodeAt(i)) return NaN;
      return base + time;
    },
    /** Keeps all but the time of a stamp just scanned; nothing where its time is written in a way not read here. */
    remember(text: string, packed: number): void {
      base = NaN;
      if (found.times < 2) return;
      bareDigits = found.hourDigits > 2 ? found.hourDigits : 0;
      if (bareDigits % 2 === 1) return;
      half = found.half;
      if (Number.isNaN(timeFrom(text, found.timeAt))) return;
      const date = packed - found.msOfDay + found.fractionMs;
      const isRead = date + timeFrom(text, found.timeAt) === packed;
      if (!isRead || parts !== Math.min(found.times, 3)) return;
      [prefix, tail, numbers, base] = [text.slice(0, found.timeAt), text.slice(end), parts, date];
      again.offsetMinutes = found.offsetMinutes;
    },
    pattern: (): StampPattern | null =>
      Number.isNaN(base) ? null : { prefix, tail, numbers, hasColons: bareDigits === 0, half },
  };
  return again;
}
