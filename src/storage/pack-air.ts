import { addDays, type PlainDate } from '../basics/calendar.js';
import { StorageError } from '../garden/store/storage-error.js';
import type { AirDay } from '../garden/store/store.js';

/**
 * The air of one place in one calendar year, indexed by the day of the year, 0 for 1 January; undefined for a missing
 * day.
 */
export type AirYear = (AirDay | undefined)[];

const MAX_DAYS = 366;
const FORMAT = 1;
/** The header: the format, then one byte for the kind of each column, in this order. */
const COLUMNS = ['min', 'mean', 'max'] as const;
/** A bit for each stored day, rounded up to a whole number of doubles. */
const DAYS_AT = 8;
const DAYS_BYTES = 48;
const COLUMNS_AT = DAYS_AT + DAYS_BYTES;

/** Encodings of a column; the smallest that restores every value bit by bit is used. */
const KINDS = [
  { scale: 0, bytes: 0 },
  { scale: 10, bytes: 2 },
  { scale: 100, bytes: 2 },
  { scale: 0, bytes: 8 },
] as const;
const [NOTHING, TENTHS, HUNDREDTHS, DOUBLES] = [0, 1, 2, 3];
/** A missing value in the whole-number encodings; doubles use NaN. */
const UNKNOWN = -32_768;

/** Ends of the dates of a leap year and of another, such as `-03-01`, because an unpacked garden has ten thousand dates. */
const [inLeapYears, inOtherYears] = [2000, 2001].map((year) =>
  Array.from({ length: MAX_DAYS }, (_, i) => addDays(`${year}-01-01` as PlainDate, i).slice(4)),
) as [string[], string[]];
const daysOfYear = (year: number): number => (Date.UTC(year + 1, 0, 1) - Date.UTC(year, 0, 1)) / 86_400_000;
/** Dates of unpacked years: the calendar has 300, and a garden reads the same thirty again and again. */
const datesByYear = new Map<number, readonly PlainDate[]>();

/** Zero-based day of the year of a date. */
export const dayIndex = (date: PlainDate): number => {
  const year = yearOf(date);
  return (Date.UTC(year, Number(date.slice(5, 7)) - 1, Number(date.slice(8))) - Date.UTC(year, 0, 1)) / 86_400_000;
};

export const yearOf = (date: PlainDate): number => Number(date.slice(0, 4));

/**
 * Packs a year of air into bytes: whole tenths or hundredths of a degree when all values of a column fit them, else
 * doubles. Numbers have this machine's byte order: little-endian on all but very few.
 *
 * @example packAirYear of a year's minima and maxima in tenths // => 56 + 2 * 2 * 366 = 1520 bytes
 */
export function packAirYear(year: AirYear): Uint8Array {
  const columns = COLUMNS.map((name) => year.map((day) => day?.[name] ?? null));
  const kinds = columns.map(kindOf);
  const packed = new Uint8Array(COLUMNS_AT + MAX_DAYS * kinds.reduce((sum, kind) => sum + KINDS[kind]!.bytes, 0));
  packed.set([FORMAT, ...kinds]);
  year.forEach((day, i) => {
    if (day) packed[DAYS_AT + (i >> 3)]! |= 1 << (i & 7);
  });
  let at = COLUMNS_AT;
  columns.forEach((values, column) => {
    const { scale, bytes } = KINDS[kinds[column]!]!;
    if (bytes === 0) return;
    const numbers = bytes === 2 ? new Int16Array(MAX_DAYS).fill(UNKNOWN) : new Float64Array(MAX_DAYS).fill(Number.NaN);
    values.forEach((value, i) => {
      if (value !== null) numbers[i] = bytes === 2 ? Math.round(value * scale) : value;
    });
    packed.set(new Uint8Array(numbers.buffer), at);
    at += bytes * MAX_DAYS;
  });
  return packed;
}

function kindOf(values: readonly (number | null)[]): number {
  const known = values.filter((value) => value !== null);
  if (known.length === 0) return NOTHING;
  for (const kind of [TENTHS, HUNDREDTHS]) {
    const { scale } = KINDS[kind]!;
    const isExact = (value: number): boolean => {
      // Truncated to 32 bits: a value beyond those, or -0, does not come back the same.
      const whole = Math.round(value * scale) | 0;
      return Object.is(whole / scale, value) && Math.abs(whole) < -UNKNOWN;
    };
    if (known.every(isExact)) return kind;
  }
  return DOUBLES;
}

/**
 * Unpacks the days of a year.
 *
 * @param packed Bytes at any alignment, because drivers return views; columns are copied.
 * @throws StorageError when the bytes are no year of air.
 */
export function unpackAirYear(year: number, packed: Uint8Array | ArrayBuffer): AirYear {
  const bytes = packed instanceof Uint8Array ? packed : new Uint8Array(packed);
  const sizes = COLUMNS.map((_, column) => KINDS[bytes[1 + column]!]?.bytes ?? Number.NaN);
  const length = COLUMNS_AT + MAX_DAYS * sizes.reduce((sum, size) => sum + size, 0);
  if (bytes[0] !== FORMAT || bytes.length !== length) {
    throw new StorageError(`the air of ${year} is damaged in the database`, { kind: 'damaged' });
  }
  let at = COLUMNS_AT;
  const [min, mean, max] = sizes.map((size, column) => {
    const copy = new Uint8Array(bytes.subarray(at, at + size * MAX_DAYS)).buffer;
    at += size * MAX_DAYS;
    const values = new Float64Array(MAX_DAYS).fill(Number.NaN);
    if (size === 8) return new Float64Array(copy);
    if (size === 0) return values;
    const { scale } = KINDS[bytes[1 + column]!]!;
    const whole = new Int16Array(copy);
    for (let i = 0; i < MAX_DAYS; i++) if (whole[i] !== UNKNOWN) values[i] = whole[i]! / scale;
    return values;
  }) as [Float64Array, Float64Array, Float64Array];
  const known = (value: number): number | null => (Number.isNaN(value) ? null : value);
  const dates = datesOf(year);
  const days: AirYear = new Array(MAX_DAYS);
  for (let i = 0; i < MAX_DAYS; i++) {
    if ((bytes[DAYS_AT + (i >> 3)]! & (1 << (i & 7))) === 0) continue;
    days[i] = { date: dates[i]!, min: known(min[i]!), mean: known(mean[i]!), max: known(max[i]!) };
  }
  return days;
}

/** Packs days, grouped by year. */
export function packedYears(days: readonly AirDay[]): { readonly year: number; readonly packed: Uint8Array }[] {
  const years = new Map<number, AirYear>();
  for (const day of days) {
    const number = yearOf(day.date);
    let year = years.get(number);
    if (!year) {
      year = new Array(MAX_DAYS);
      years.set(number, year);
    }
    year[dayIndex(day.date)] = day;
  }
  return [...years].map(([year, kept]) => ({ year, packed: packAirYear(kept) }));
}

function datesOf(year: number): readonly PlainDate[] {
  let dates = datesByYear.get(year);
  if (!dates) {
    const endings = daysOfYear(year) === MAX_DAYS ? inLeapYears : inOtherYears;
    dates = endings.map((ending) => `${year}${ending}` as PlainDate);
    datesByYear.set(year, dates);
  }
  return dates;
}

/** Number of known days in a year. */
export const daysInYear = (year: AirYear): number => year.reduce((sum, day) => (day ? sum + 1 : sum), 0);
