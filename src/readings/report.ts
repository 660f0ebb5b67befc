import { addDays, daysBetween, HOUR_MS, instantText } from '../basics/calendar.js';
import type { Fact } from '../basics/fact.js';
import type { TemperatureUnit } from '../basics/units.js';
import type { ReadSeries } from './read-series.js';
import { longestJoinedMs } from './time/step.js';

const MAX_GAPS = 100;
export const MAX_DROPPED = 100;

/** Description of a column of a file. Index 1 is the first. */
export interface ColumnReport {
  readonly index: number;
  readonly name: string;
  /** `time`, `date`, `temperature`, `text`, or what its name says it is: `humidity`, `battery`. */
  readonly looksLike: string;
  readonly unit?: TemperatureUnit;
}

/** A value that was left out, and why. */
export interface DroppedValue {
  readonly line: number;
  readonly value: string;
  readonly why: Fact;
  /** The value [°C], where it is a temperature. */
  readonly valueC?: number;
}
/** A value that was kept though it hardly can be true, and why. */
export type DoubtfulValue = DroppedValue;

/** Report of a file's layout. */
export interface FileReport {
  readonly delimiter: string;
  readonly decimalMark: '.' | ',';
  readonly encoding: string;
  /** null: no line names the columns. */
  readonly headerLine: number | null;
  readonly timeColumn: number;
  readonly column: number;
  readonly columns: readonly ColumnReport[];
  /** null: the stamps are counts of seconds. */
  readonly dateOrder: string | null;
  readonly clock: 'local' | 'standard' | 'utc' | 'offset';
  /** The first of them. */
  readonly dropped: readonly DroppedValue[];
  readonly droppedCount: number;
  readonly doubtful: readonly DoubtfulValue[];
  readonly doubtfulCount: number;
}

export interface Gap {
  readonly from: string;
  readonly to: string;
  readonly hours: number;
}

/** Report of a series: temperatures in °C, not yet rounded. */
export interface SeriesReport extends Partial<FileReport> {
  readonly medium: ReadSeries['medium'];
  readonly probeDepthCm: number | null;
  readonly unit: TemperatureUnit;
  readonly timeZone: string;
  readonly stepMinutes: number | null;
  readonly rows: number;
  readonly used: number;
  readonly from: string | null;
  readonly to: string | null;
  readonly min: number | null;
  readonly mean: number | null;
  readonly max: number | null;
  readonly dropped: readonly DroppedValue[];
  readonly droppedCount: number;
  readonly gaps: readonly Gap[];
  readonly origin: ReadSeries['origin'];
  readonly days: ReadSeries['days'];
  readonly dayBasis: ReadSeries['dayBasis'];
}

/** Tells what was understood of a series, and of the file it came in where there was one. */
export function reportOf(series: ReadSeries, rows: number, file?: FileReport): SeriesReport {
  const { readings, days } = series;
  const lows = days.flatMap((day) => day.min ?? day.mean ?? []);
  const highs = days.flatMap((day) => day.max ?? day.mean ?? []);
  return {
    ...file,
    medium: series.medium,
    probeDepthCm: series.probeDepthCm,
    unit: series.unit,
    timeZone: series.zone.name,
    stepMinutes: stepMinutesOf(series),
    rows,
    used: readings ? readings.atMs.length : days.length,
    from: readings ? stampAt(series, 0) : (days[0]?.date ?? null),
    to: readings ? stampAt(series, readings.atMs.length - 1) : (days.at(-1)?.date ?? null),
    min: lows.length > 0 ? lows.reduce((a, b) => Math.min(a, b)) : null,
    mean: series.meanC,
    max: highs.length > 0 ? highs.reduce((a, b) => Math.max(a, b)) : null,
    dropped: file?.dropped ?? [],
    droppedCount: file?.droppedCount ?? 0,
    gaps: gapsOf(series),
    origin: series.origin,
    days,
    dayBasis: series.dayBasis,
  };
}

/** The usual time between readings, to a hundredth of a minute; of days, a day. */
function stepMinutesOf({ readings, days, usualStepMs }: ReadSeries): number | null {
  if (!readings) return days.length > 1 ? 24 * 60 : null;
  return usualStepMs === null ? null : Math.round(usualStepMs / 600) / 100;
}

function stampAt({ readings, zone }: ReadSeries, i: number): string | null {
  const atMs = readings?.atMs[i];
  return atMs === undefined ? null : instantText(atMs, zone);
}

function gapsOf(series: ReadSeries): Gap[] {
  const gaps = series.readings ? gapsBetweenReadings(series, series.readings.atMs) : gapsBetweenDays(series.days);
  return gaps.slice(0, MAX_GAPS);
}

function gapsBetweenReadings(series: ReadSeries, atMs: Float64Array): Gap[] {
  const joinedMs = longestJoinedMs(series.usualStepMs);
  const gaps: Gap[] = [];
  for (let i = 1; i < atMs.length && gaps.length < MAX_GAPS; i++) {
    const lengthMs = atMs[i]! - atMs[i - 1]!;
    if (lengthMs > joinedMs) {
      gaps.push({ from: stampAt(series, i - 1)!, to: stampAt(series, i)!, hours: lengthMs / HOUR_MS });
    }
  }
  return gaps;
}

function gapsBetweenDays(days: ReadSeries['days']): Gap[] {
  return days.flatMap(({ date }, i) => {
    const missing = i === 0 ? 0 : daysBetween(days[i - 1]!.date, date) - 1;
    return missing > 0 ? [{ from: addDays(date, -missing), to: addDays(date, -1), hours: 24 * missing }] : [];
  });
}
