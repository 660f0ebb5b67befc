import { findStamp, fixedZone, type PlainDate, type Zone } from '../basics/calendar.js';
import { type Fault, type Note, notUnderstood, RequestError } from '../basics/errors.js';
import type { Fact } from '../basics/fact.js';
import { type Basis, basisCode, type Medium, type TemperatureSeries } from '../basics/series.js';
import { celsiusDeltaFromFahrenheit, celsiusFrom, type TemperatureUnit } from '../basics/units.js';
import { doubtfulMinimaNotes } from './checks/doubtful-minima.js';
import { type Day, daysOf } from './daily/days.js';
import { type RawReading, type Readings, rowsInTimeOrder } from './readings.js';
import { fileChoice, fileQuestion, readingsRefusal, seriesWarning } from './readings-facts.js';
import { longestJoinedMs, usualStepMs } from './time/step.js';

/** Colder or hotter than this no thermometer in soil or air has been [°C]. */
const MIN_C = -60;
const MAX_C = 75;
/** True for a temperature that soil or air can have [°C]. */
export const isTemperature = (tempC: number): boolean => tempC >= MIN_C && tempC <= MAX_C;
/** No place's soil or air keeps a mean above this [°C]: such a series is in another unit. */
const MAX_MEAN_C = 45;

/** A series as the service understands it: degrees Celsius, in time order, each reading or day once. */
export interface ReadSeries {
  readonly medium: Medium;
  /** null: measured at the seed. */
  readonly probeDepthCm: number | null;
  readonly origin: 'measured' | 'forecast';
  readonly unit: TemperatureUnit;
  readonly zone: Zone;
  /** The readings as they are; null where the series came by the day. */
  readonly readings: Readings | null;
  /** Minimum, mean and maximum of each day that the series touches. */
  readonly days: readonly Day[];
  /** Provenance of each day of a daily series: codes of basics/series. */
  readonly dayBasis: readonly number[];
  /** Half the 80 % range of each day's mean [K], where the sender said it; shorter than the days: none was said of the rest. */
  readonly dayPlusMinusK: readonly (number | null)[];
  readonly usualStepMs: number | null;
  /** Over the time that the readings cover; of days, the mean of their means. null: they cover none. */
  readonly meanC: number | null;
  readonly warnings: readonly Note[];
}

/**
 * Reads one series of the contract's shape.
 *
 * @param series The series as sent; already of the right shape.
 * @param zone   The place's zone; without one, the offset of the first stamp serves.
 * @param path   Where in the request the series stands.
 * @throws {RequestError} with every fault found: stamps that are none, values out of range, two values for one day.
 */
export function readSeries(
  series: TemperatureSeries,
  zone: Zone | undefined,
  path: readonly (string | number)[],
): ReadSeries {
  const read = series.readings ? readReadings(series, zone, path) : readDaily(series, zone, path);
  refuseOtherUnit(read, path);
  return {
    ...read,
    warnings: [...read.warnings, ...unitDoubts(read), ...airDoubts(read)],
  };
}

/** Minima of the air that hardly can be true are told; soil and readings have checks of their own. */
export const airDoubts = ({ medium, readings, days }: Pick<ReadSeries, 'medium' | 'readings' | 'days'>): Fact[] =>
  medium === 'air' && readings === null ? doubtfulMinimaNotes(days) : [];

/** The offset that a series' stamps carry, as a zone; undefined where the first has none. */
export function zoneOfStamps(series: TemperatureSeries): Zone | undefined {
  const first = series.readings?.[0];
  const stamp = first && findStamp(first.at);
  return stamp && fixedZone(stamp.offsetMinutes);
}

function readReadings(
  series: TemperatureSeries,
  zone: Zone | undefined,
  path: readonly (string | number)[],
): ReadSeries {
  const faults: Fault[] = [];
  const raw: RawReading[] = [];
  const toCelsius = celsiusFrom[series.unit];
  const fallback = basisCode(basisOf(series));
  series.readings!.forEach((row, i) => {
    const stamp = findStamp(row.at, zone);
    const valueC = toCelsius(row.value);
    if (!stamp) {
      faults.push({ path: [...path, 'readings', i, 'at'], detail: stampFault(row.at, zone) });
    } else if (!isTemperature(valueC)) {
      faults.push({ path: [...path, 'readings', i, 'value'], detail: rangeFault(row.value, series.unit) });
    } else {
      raw.push({ atMs: stamp.ms, valueC, basis: row.basis ? basisCode(row.basis) : fallback });
    }
  });
  if (faults.length > 0 && !zone && findStamp(`${series.readings!.find((row) => !findStamp(row.at))?.at}Z`)) {
    throw new RequestError('time-zone-needed', faults[0]!.detail, faults.slice(0, 1));
  }
  refuseFaults(faults);
  return readingsSeries(raw, { ...shapeOf(series), zone: zone ?? zoneOfStamps(series)! });
}

/** A series from readings that are already degrees and instants. */
function readingsSeries(
  raw: readonly RawReading[],
  shape: Pick<ReadSeries, 'medium' | 'probeDepthCm' | 'origin' | 'unit' | 'zone'>,
): ReadSeries {
  const { readings, conflictsMs } = rowsInTimeOrder(raw);
  const step = usualStepMs(readings.atMs);
  return {
    ...shape,
    readings,
    ...daysOf(readings, shape.zone, longestJoinedMs(step)),
    dayBasis: [],
    dayPlusMinusK: [],
    usualStepMs: step,
    warnings: conflictsMs.length === 0 ? [] : [seriesWarning('two-values-at-once', { instants: conflictsMs.length })],
  };
}

function readDaily(series: TemperatureSeries, zone: Zone | undefined, path: readonly (string | number)[]): ReadSeries {
  const faults: Fault[] = [];
  const toCelsius = celsiusFrom[series.unit];
  const days = new Map<PlainDate, Day>();
  const basisByDate = new Map<PlainDate, number>();
  const plusMinusByDate = new Map<PlainDate, number>();
  series.daily!.forEach((row, i) => {
    if (row.complete === false) return;
    const at = [...path, 'daily', i];
    const degrees = { min: toC(row.min), mean: toC(row.mean), max: toC(row.max) };
    function toC(value: number | undefined): number | null {
      return value === undefined ? null : toCelsius(value);
    }
    for (const key of ['min', 'mean', 'max'] as const) {
      const valueC = degrees[key];
      if (valueC !== null && !isTemperature(valueC)) {
        faults.push({ path: [...at, key], detail: rangeFault(row[key]!, series.unit) });
      }
    }
    const { min, mean, max } = degrees;
    if (mean === null && (min === null || max === null)) {
      faults.push({ path: at, detail: readingsRefusal('series.no-mean', { date: row.date }) });
    } else if ((min === null) !== (max === null)) {
      faults.push({ path: at, detail: readingsRefusal('series.half-a-day', { date: row.date }) });
    } else if (min !== null && max !== null && (min > max || (mean !== null && (mean < min || mean > max)))) {
      faults.push({ path: at, detail: readingsRefusal('series.not-rising', { date: row.date }) });
    }
    const earlier = days.get(row.date);
    if (earlier && (earlier.min !== min || earlier.mean !== mean || earlier.max !== max)) {
      faults.push({ path: at, detail: readingsRefusal('series.same-date', { date: row.date }) });
    }
    days.set(row.date, { date: row.date, min, mean, max, readings: 0, complete: true });
    basisByDate.set(row.date, basisCode(row.basis ?? basisOf(series)));
    if (row.plusMinus !== undefined) {
      plusMinusByDate.set(row.date, series.unit === 'F' ? celsiusDeltaFromFahrenheit(row.plusMinus) : row.plusMinus);
    }
  });
  refuseFaults(faults);
  if (!zone) {
    throw new RequestError('time-zone-needed', readingsRefusal('time-zone-needed.days'), [
      { path: ['where', 'place', 'timeZone'], detail: readingsRefusal('time-zone-needed.days.field') },
    ]);
  }
  if (days.size === 0) {
    throw new RequestError('too-few-readings', readingsRefusal('too-few-readings.no-whole-day'));
  }
  const inOrder = [...days.values()].sort((a, b) => (a.date < b.date ? -1 : 1));
  return {
    ...shapeOf(series),
    zone,
    readings: null,
    days: inOrder,
    dayBasis: inOrder.map((day) => basisByDate.get(day.date)!),
    dayPlusMinusK: plusMinusByDate.size === 0 ? [] : inOrder.map((day) => plusMinusByDate.get(day.date) ?? null),
    usualStepMs: null,
    meanC: meanOfDays(inOrder),
    warnings: [],
  };
}

/** The mean of days' means; of a day without one, the middle of its minimum and maximum. */
export function meanOfDays(days: readonly Day[]): number | null {
  const means = days.map((day) => day.mean ?? (day.min! + day.max!) / 2);
  return means.length > 0 ? means.reduce((sum, mean) => sum + mean, 0) / means.length : null;
}

const basisOf = (series: TemperatureSeries): Basis => (series.origin === 'forecast' ? 'forecast' : 'measured');

const shapeOf = (series: TemperatureSeries) => ({
  medium: series.medium,
  probeDepthCm: series.probeDepthCm ?? null,
  origin: series.origin ?? 'measured',
  unit: series.unit,
});

function stampFault(at: string, zone: Zone | undefined): Fact {
  if (!zone && findStamp(`${at}Z`)) {
    return readingsRefusal('time-zone-needed.stamp', { at });
  }
  return readingsRefusal('series.no-stamp', { at: at.slice(0, 40) });
}

function rangeFault(value: number, unit: TemperatureUnit): Fact {
  const others = (['C', 'F', 'K'] as const).filter(
    (other) => other !== unit && celsiusFrom[other](value) > -30 && celsiusFrom[other](value) < 50,
  );
  return readingsRefusal('series.out-of-range', { value, unit, maybeUnits: others.join(', ') || null });
}

function refuseFaults(faults: readonly Fault[]): void {
  if (faults.length > 0) throw notUnderstood(faults);
}

const tenth = (value: number): number => Math.round(value * 10) / 10;

/** Colder than this soil keeps no mean over the days that a series covers, nor hotter, but for deserts and snow [°C]. */
const COLD_SOIL_MEAN_C = -2;
const HOT_SOIL_MEAN_C = 33;

/** A unit that makes the soil colder or hotter than soil usually is, where another would not, is told. */
export function unitDoubts({ medium, unit, meanC }: Pick<ReadSeries, 'medium' | 'unit' | 'meanC'>): Fact[] {
  if (medium !== 'soil' || meanC === null) return [];
  const asSent = unit === 'F' ? meanC * 1.8 + 32 : meanC;
  const other =
    unit === 'F' && meanC < COLD_SOIL_MEAN_C && asSent > 3 ? 'C' : unit === 'C' && meanC > HOT_SOIL_MEAN_C ? 'F' : null;
  if (other === null) return [];
  const read = other === 'C' ? asSent : celsiusFrom.F(asSent);
  return [seriesWarning('unit-doubtful', { unit, meanC: tenth(meanC), otherUnit: other, otherMeanC: tenth(read) })];
}

/** Degrees Fahrenheit or kelvin sent as Celsius would be misread in silence: a mean no place has gives them away. */
export function refuseOtherUnit({ days, unit }: ReadSeries, path: readonly (string | number)[]): void {
  const meanC = meanOfDays(days);
  if (unit === 'C' && meanC !== null && meanC > MAX_MEAN_C) {
    const detail = fileQuestion('choose-unit.too-hot', { meanC: tenth(meanC) });
    throw new RequestError('choose-unit', detail, [
      {
        path: [...path, 'unit'],
        detail,
        choices: [fileChoice('F', 'choose-unit.mean', { unit: 'F', meanC: tenth(celsiusFrom.F(meanC)) })],
      },
    ]);
  }
}
