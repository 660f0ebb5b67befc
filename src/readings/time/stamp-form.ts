import { type DateStyle, dateCode } from './date-code.js';
import { type EpochKind, epochKinds, epochMs } from './epoch.js';
import { type Layout, newScan, type Scan } from './scan/scan.js';
import { scanStamp } from './scan/scan-stamp.js';

/** Form of the stamps of a column. */
export interface StampForm {
  readonly kind: 'calendar' | 'day-of-year' | 'clock' | EpochKind;
  /** Place of the four-digit year in a calendar date; `unknown` if all three numbers have two digits. */
  readonly year: 'first' | 'last' | 'unknown';
  readonly month: 'number' | 'name';
  /** `YYYYMMDD` and what follows, without separators. */
  readonly isCompact: boolean;
  readonly hasTime: boolean;
  /** Times after a day of the year are hhmm without a separator: `45` is 00:45. */
  readonly isHhmm: boolean;
  /** Share of the stamps with an offset from UTC. A count since 1970 is always in UTC. */
  readonly offset: 'none' | 'some' | 'all';
  /** A zone's name or letters behind the time, of which nothing is concluded. */
  readonly zoneWord: string | null;
}

/** A form of this many cells in a hundred is the column's. */
const USUAL_PERCENT = 80;
/** Stamps of a column have a time of day if so many in a hundred do. */
const TIMES_PERCENT = 30;
const MAX_CELLS = 100;
const TELLING_CELLS = 10;

const plain: StampForm = {
  kind: 'calendar',
  year: 'first',
  month: 'number',
  isCompact: false,
  hasTime: true,
  isHhmm: false,
  offset: 'none',
  zoneWord: null,
};
const layout: Layout = { dateNumbers: 3, hasMonthName: false, isCompact: false, isOrdinal: false, isHhmm: false };

/** A way to write stamps: what the scanner is to look for, and how its numbers make a date (null: there is none). */
interface Writing {
  readonly form: StampForm;
  readonly layout: Layout;
  readonly style: DateStyle | null;
}

/** Forms in order of preference, as two may fit all cells: `2027050110` is an hour of 2027, not a second of 2034. */
const writings: readonly Writing[] = [
  {
    form: { ...plain, isCompact: true },
    layout: { ...layout, dateNumbers: 1, isCompact: true },
    style: 'compact',
  },
  { form: plain, layout, style: 'year-first' },
  { form: { ...plain, year: 'last' }, layout, style: 'year-last' },
  { form: { ...plain, year: 'unknown' }, layout, style: 'year-unknown' },
  {
    form: { ...plain, month: 'name' },
    layout: { ...layout, dateNumbers: 2, hasMonthName: true },
    style: 'month-name',
  },
  {
    form: { ...plain, kind: 'day-of-year' },
    layout: { ...layout, dateNumbers: 2, isOrdinal: true },
    style: 'ordinal',
  },
  { form: { ...plain, kind: 'clock' }, layout: { ...layout, dateNumbers: 0 }, style: null },
];

/** The scanner's view of a form: what to look for, and how its numbers make a date. */
export function writingOf(form: StampForm): Writing {
  const { layout, style } = writings.find(
    ({ form: { kind, year, month, isCompact } }) =>
      kind === form.kind &&
      month === form.month &&
      isCompact === form.isCompact &&
      (findsItsYear(form) || year === form.year),
  )!;
  return { form, layout: { ...layout, isHhmm: form.isHhmm }, style };
}

/** Forms whose year is found by itself, wherever it stands. */
const findsItsYear = ({ kind, month, isCompact }: StampForm): boolean =>
  kind !== 'calendar' || month === 'name' || isCompact;

/**
 * How the stamps of one column are written, or undefined where fewer than 80 % of the cells that are not blank are
 * stamps of one form. A plain number is none unless it is `YYYYMMDD...`, a count of 10 or 13 digits since 1970, or hhmm.
 *
 * @param cells - some of one column's cells, or of several that are joined by blanks (date and time; year and day of the
 *   year and hhmm)
 */
export function stampFormOf(cells: readonly string[]): StampForm | undefined {
  const filled = cells.filter((cell) => cell.trim() !== '').slice(0, MAX_CELLS);
  if (filled.length === 0) return undefined;
  const scan = newScan();
  let best: Tally | undefined;
  for (const writing of writings) {
    const tally = tallyOf(filled, writing, scan);
    if (tally.count > (best?.count ?? 0)) best = tally;
    if (tally.count === filled.length) break;
  }
  if (best && best.count * 100 >= USUAL_PERCENT * filled.length) return formOf(best);
  for (const kind of epochKinds) {
    const count = filled.filter((cell) => !Number.isNaN(epochMs(cell, kind))).length;
    if (count * 100 >= USUAL_PERCENT * filled.length) return { ...plain, kind, offset: 'all' };
  }
  return undefined;
}

interface Tally {
  readonly form: StampForm;
  count: number;
  times: number;
  offsets: number;
  hhmm: number;
  zoneWord: string | null;
}

function tallyOf(cells: readonly string[], { form, layout, style }: Writing, scan: Scan): Tally {
  const tally: Tally = { form, count: 0, times: 0, offsets: 0, hhmm: 0, zoneWord: null };
  let seen = 0;
  for (const cell of cells) {
    // Most columns are none of most forms, which soon shows.
    if (seen++ === TELLING_CELLS && tally.count < TELLING_CELLS / 2) break;
    if (!scanStamp(scan, cell, layout) || (style && Number.isNaN(dateCode(scan, style)))) continue;
    tally.count++;
    if (scan.times > 0) tally.times++;
    if (!Number.isNaN(scan.offsetMinutes)) tally.offsets++;
    if (scan.hourDigits > 2) tally.hhmm++;
    tally.zoneWord ??= scan.zoneWord;
  }
  return tally;
}

const formOf = ({ form, count, times, offsets, hhmm, zoneWord }: Tally): StampForm => ({
  ...form,
  // One odd cell does not decide; but some programs leave 00:00 out.
  hasTime: times >= TIMES_PERCENT * 0.01 * count,
  isHhmm: form.kind === 'day-of-year' && hhmm > 0,
  offset: offsets === 0 ? 'none' : offsets < count ? 'some' : 'all',
  zoneWord,
});
