import { dateAt, fixedZone, type PlainDate, type Zone } from '../../basics/calendar.js';
import { RequestError } from '../../basics/errors.js';
import { basisCode } from '../../basics/series.js';
import { celsiusFrom } from '../../basics/units.js';
import type { Day } from '../daily/days.js';
import { fileReport } from '../file-report.js';
import { airDoubts, isTemperature, meanOfDays, type ReadSeries, refuseOtherUnit, unitDoubts } from '../read-series.js';
import { readingsRefusal, rowFact } from '../readings-facts.js';
import {
  type DroppedList,
  drop,
  type FileHints,
  type FileRead,
  nothingRead,
  type RowsRead,
} from '../text/rows-read.js';
import type { DateOrder } from '../time/date-order.js';
import { type ReadingUnit, settleUnit, unitWarnings } from './settle-unit.js';

const NO_SUCH_DATE = rowFact('row.no-such-date');
const NO_TEMPERATURE = rowFact('row.no-temperature');
const SAME_DATE = rowFact('row.same-date');

/** A day or two may come twice by mistake. */
const MAX_ROWS_A_DAY = 1.2;

/** A file of one row to a day: its minimum, mean and maximum, or what there is of them. */
export function* settleDays(
  read: RowsRead,
  hints: FileHints,
  placeZone: Zone | undefined,
  order: DateOrder | null,
  shape: Pick<ReadSeries, 'medium' | 'probeDepthCm' | 'origin'>,
): Generator<void, FileRead> {
  const [main] = read.plan.channels as [RowsRead['plan']['channels'][number]];
  const count = Math.max(...read.stores.map((store) => store.count));
  const { values, count: written } = { values: read.stores[0]!.values(), count: read.stores[0]!.count };
  const unit = yield* settleUnit(read, hints, main, values.subarray(0, written), function* (tried) {
    yield;
    const days = daysIn(read, tried, { first: [], count: 0 });
    const mean = meanOfDays(days);
    if (mean === null) return null;
    const lows = days.map((day) => day.min ?? day.mean!);
    const highs = days.map((day) => day.max ?? day.mean!);
    return {
      used: days.length,
      min: lows.reduce((a, b) => Math.min(a, b)),
      mean,
      max: highs.reduce((a, b) => Math.max(a, b)),
    };
  });
  const days = daysIn(read, unit, read.dropped);
  refuseManyADay(days.length, count);
  if (days.length === 0) throw nothingRead(read);
  const series: ReadSeries = {
    ...shape,
    unit: unit.unit,
    zone: placeZone ?? read.time.clock.zone ?? fixedZone(0),
    readings: null,
    days,
    dayBasis: days.map(() => basisCode('measured')),
    dayPlusMinusK: [],
    usualStepMs: null,
    meanC: meanOfDays(days),
    warnings: unitWarnings(hints, main),
  };
  refuseOtherUnit(series, []);
  const clock = read.time.clock.isStandard ? 'standard' : 'local';
  return {
    series: {
      ...series,
      warnings: [...series.warnings, ...unitDoubts(series), ...airDoubts(series)],
    },
    rows: read.rows,
    file: fileReport(read, order, clock, { list: [], count: 0 }),
  };
}

/** Several rows to a date are no days: their time of day was not found. */
function refuseManyADay(days: number, rows: number): void {
  if (rows <= MAX_ROWS_A_DAY * days) return;
  throw new RequestError('no-readings', readingsRefusal('no-readings.several-a-day'), [
    { parameter: 'timeColumn', detail: readingsRefusal('no-readings.several-a-day.field') },
  ]);
}

/** The days of a file in a unit, in order; what cannot be used is dropped. */
function daysIn(read: RowsRead, { unit, scale }: ReadingUnit, dropped: DroppedList): Day[] {
  const toCelsius = celsiusFrom[unit];
  const utc = fixedZone(0);
  const byDate = new Map<PlainDate, { min?: number; mean?: number; max?: number; line: number }>();
  read.plan.channels.forEach(({ meaning }, i) => {
    const store = read.stores[i]!;
    const [stamps, values] = [store.stamps(), store.values()];
    const statistic = read.stores.length === 1 ? 'mean' : (meaning.statistic ?? 'mean');
    for (let row = 0; row < store.count; row++) {
      const line = store.lineOf(row);
      const valueC = toCelsius(scale === 1 ? values[row]! : values[row]! * scale);
      const date = Number.isNaN(stamps[row]!) ? null : dateAt(stamps[row]!, utc);
      const day = date === null ? undefined : byDate.get(date);
      const why =
        date === null
          ? NO_SUCH_DATE
          : !isTemperature(valueC)
            ? NO_TEMPERATURE
            : day?.[statistic] !== undefined && day[statistic] !== valueC
              ? SAME_DATE
              : null;
      if (why !== null) drop(dropped, line, String(values[row]), why);
      else byDate.set(date!, { line, ...day, [statistic]: valueC });
    }
  });
  const days: Day[] = [];
  for (const [date, { min, mean, max, line }] of [...byDate].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const isWhole = mean !== undefined || (min !== undefined && max !== undefined);
    if (!isWhole) drop(dropped, line, '', rowFact('row.half-a-day', { lacks: min === undefined ? 'min' : 'max' }));
    else if (min !== undefined && max !== undefined && min > max) drop(dropped, line, '', rowFact('row.min-above-max'));
    else days.push({ date, ...bounded(min ?? null, mean ?? null, max ?? null), readings: 0, complete: true });
  }
  return days;
}

/** A day has both a minimum and a maximum, or neither; a mean outside them is not used. */
function bounded(min: number | null, mean: number | null, max: number | null): Pick<Day, 'min' | 'mean' | 'max'> {
  if (min === null || max === null) return { min: null, mean, max: null };
  return { min, mean: mean !== null && mean >= min && mean <= max ? mean : null, max };
}
