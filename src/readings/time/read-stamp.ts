import { dateCode } from './date-code.js';
import { type EpochKind, epochMs } from './epoch.js';
import { likeSameDay, newSameDay, readSameDay, rememberDay, type StampPattern } from './same-day.js';
import { newScan } from './scan/scan.js';
import { scanStamp } from './scan/scan-stamp.js';
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
  /** Form of the stamps like the one read last; null if not even those of its day are alike. */
  likeLast(): StampPattern | null;
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
  const scan = newScan();
  const day = newSameDay();
  const reader: StampReader = {
    offsetMinutes: NaN,
    likeLast: () => likeSameDay(day),
    read(text) {
      const quick = readSameDay(day, text);
      if (!Number.isNaN(quick)) {
        reader.offsetMinutes = day.offsetMinutes;
        return quick;
      }
      if (!scanStamp(scan, text, layout)) return noStamp(reader);
      const code = style === null ? 0 : dateCode(scan, style);
      if (Number.isNaN(code)) return noStamp(reader);
      const packed = code * DATE_SLOT + scan.msOfDay;
      rememberDay(day, text, packed, scan);
      reader.offsetMinutes = scan.offsetMinutes;
      return packed;
    },
  };
  return reader;
}

function noStamp(reader: StampReader): number {
  reader.offsetMinutes = NaN;
  return NaN;
}
