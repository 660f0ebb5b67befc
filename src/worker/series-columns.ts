import { type PlainDate, zoneNamed } from '../basics/calendar.js';
import { sha256 } from '../basics/digest.js';
import type { Note } from '../basics/errors.js';
import type { Day } from '../readings/daily/days.js';
import type { ReadSeries } from '../readings/read-series.js';
import type { Readings } from '../readings/readings.js';

/** The fields of a series besides its columns. */
interface Head extends Pick<ReadSeries, 'medium' | 'probeDepthCm' | 'origin' | 'unit' | 'usualStepMs' | 'meanC'> {
  readonly zone: string;
  readonly days: number;
  /** null: a series of daily values. */
  readonly readings: number | null;
  readonly dayBasis: number;
  readonly dayPlusMinusK: number;
}

/** A series that any thread can read without copying its columns. */
export interface SeriesColumns {
  readonly head: Head;
  readonly memory: SharedArrayBuffer;
  /** Covers all but the warnings: equal digests mean the same temperatures. */
  readonly digest: string;
  readonly warnings: readonly Note[];
}

const packed = new WeakMap<ReadSeries, SeriesColumns>();

/** A series as columns in shared memory, cached by the series object. */
export function columnsOf(series: ReadSeries): SeriesColumns {
  const columns = packed.get(series) ?? pack(series);
  packed.set(series, columns);
  return columns;
}

/** A digest of the temperatures of a series, without its warnings. */
export const digestOfSeries = (series: ReadSeries): string => columnsOf(series).digest;

/** Shared memory of a series [bytes]. */
export const bytesOfSeries = (series: ReadSeries): number => columnsOf(series).memory.byteLength;

/** Restores a series from columns, equal to the original. */
export function seriesOf(columns: SeriesColumns): ReadSeries {
  const { head, memory, warnings } = columns;
  const { zone, days: _, readings: __, dayBasis: ___, dayPlusMinusK: ____, ...rest } = head;
  const { date, min, mean, max, count, complete, basis, plusMinus, readings } = viewsOf(head, memory);
  const days = Array.from(
    { length: head.days },
    (_, day): Day => ({
      date: dateOf(date[day]!),
      min: orNull(min[day]!),
      mean: orNull(mean[day]!),
      max: orNull(max[day]!),
      readings: count[day]!,
      complete: complete[day] === 1,
    }),
  );
  const series: ReadSeries = {
    ...rest,
    zone: zoneNamed(zone),
    days,
    readings,
    dayBasis: [...basis],
    dayPlusMinusK: [...plusMinus].map(orNull),
    warnings,
  };
  packed.set(series, columns);
  return series;
}

/** The same temperatures with other warnings. */
export function withWarnings(series: ReadSeries, warnings: readonly Note[]): ReadSeries {
  if (warnings.length === 0 && series.warnings.length === 0) return series;
  const other = { ...series, warnings };
  packed.set(other, { ...columnsOf(series), warnings });
  return other;
}

function pack(series: ReadSeries): SeriesColumns {
  const { zone, days, readings, dayBasis, dayPlusMinusK, warnings, ...rest } = series;
  const head: Head = {
    ...rest,
    zone: zone.name,
    days: days.length,
    readings: readings ? readings.atMs.length : null,
    dayBasis: dayBasis.length,
    dayPlusMinusK: dayPlusMinusK.length,
  };
  const memory = new SharedArrayBuffer(bytesOf(head));
  const views = viewsOf(head, memory);
  for (let day = 0; day < days.length; day++) {
    const one = days[day]!;
    views.date[day] = numberOf(one.date);
    views.min[day] = one.min ?? Number.NaN;
    views.mean[day] = one.mean ?? Number.NaN;
    views.max[day] = one.max ?? Number.NaN;
    views.count[day] = one.readings;
    views.complete[day] = one.complete ? 1 : 0;
  }
  views.basis.set(dayBasis);
  for (let day = 0; day < dayPlusMinusK.length; day++) views.plusMinus[day] = dayPlusMinusK[day] ?? Number.NaN;
  if (readings && views.readings) {
    views.readings.atMs.set(readings.atMs);
    views.readings.valueC.set(readings.valueC);
    views.readings.basis.set(readings.basis);
  }
  const digest = sha256(JSON.stringify(head), new Uint8Array(memory)).toString('base64');
  return { head, memory, digest, warnings };
}

/** Columns of eight-byte numbers come first, then of four, then of one, so that each is aligned. */
function viewsOf({ days, readings, dayBasis, dayPlusMinusK }: Head, memory: SharedArrayBuffer) {
  let at = 0;
  const next = <Column extends { readonly byteLength: number }>(
    make: new (memory: SharedArrayBuffer, at: number, length: number) => Column,
    length: number,
  ): Column => {
    const column = new make(memory, at, length);
    at += column.byteLength;
    return column;
  };
  const min = next(Float64Array, days);
  const mean = next(Float64Array, days);
  const max = next(Float64Array, days);
  const plusMinus = next(Float64Array, dayPlusMinusK);
  const atMs = next(Float64Array, readings ?? 0);
  const valueC = next(Float64Array, readings ?? 0);
  const date = next(Int32Array, days);
  const count = next(Int32Array, days);
  const complete = next(Uint8Array, days);
  const basis = next(Uint8Array, dayBasis);
  const ofReadings = next(Uint8Array, readings ?? 0);
  return {
    ...{ date, min, mean, max, count, complete, basis, plusMinus },
    readings: readings === null ? null : ({ atMs, valueC, basis: ofReadings } as Readings),
  };
}

const bytesOf = ({ days, readings, dayBasis, dayPlusMinusK }: Head): number =>
  days * (3 * 8 + 2 * 4 + 1) + dayPlusMinusK * 8 + dayBasis + (readings ?? 0) * (2 * 8 + 1);

const orNull = (value: number): number | null => (Number.isNaN(value) ? null : value);

/** A date as a number, such as 20270503. */
const numberOf = (date: PlainDate): number =>
  10_000 * Number(date.slice(0, 4)) + 100 * Number(date.slice(5, 7)) + Number(date.slice(8));

const two = (value: number): string => (value < 10 ? `0${value}` : `${value}`);

const dateOf = (value: number): PlainDate => {
  const [year, month, day] = [Math.floor(value / 10_000), Math.floor(value / 100) % 100, value % 100];
  return `${year}-${two(month)}-${two(day)}` as PlainDate;
};
