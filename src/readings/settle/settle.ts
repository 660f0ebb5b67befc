import type { Zone } from '../../basics/calendar.js';
import { type Note, RequestError } from '../../basics/errors.js';
import type { Fact } from '../../basics/fact.js';
import type { Medium } from '../../basics/series.js';
import { celsiusFrom } from '../../basics/units.js';
import { judgeReadings } from '../checks/doubtful.js';
import type { Channel } from '../columns/channel.js';
import { daysInSlices } from '../daily/days.js';
import { fileReport } from '../file-report.js';
import { type ReadSeries, refuseOtherUnit, unitDoubts } from '../read-series.js';
import { fileChoice, fileQuestion, readingsRefusal, rowFact, seriesWarning } from '../readings-facts.js';
import { type DoubtfulValue, MAX_DROPPED } from '../report.js';
import {
  type DroppedList,
  drop,
  type FileHints,
  type FileRead,
  nothingRead,
  type RowsRead,
} from '../text/rows-read.js';
import { lostClockRows } from '../time/lost-clock.js';
import { longestJoinedMs, usualStepMs } from '../time/step.js';
import { inTimeOrder, type Ordered } from '../time/time-order.js';
import { pickBlock, refuseOverlappingBlocks } from './settle-blocks.js';
import { settleClock, toWallClock } from './settle-clock.js';
import { settleDays } from './settle-days.js';
import { settleOrder } from './settle-order.js';
import { type ReadingUnit, settleUnit, unitWarnings } from './settle-unit.js';

const SLICE = 100_000;

/** Settles what only the whole file proves: the order of its dates, its clock, its unit, its faults. */
export function* settle(read: RowsRead, hints: FileHints, placeZone: Zone | undefined): Generator<void, FileRead> {
  const order = yield* settleOrder(read, hints);
  const [main] = read.plan.channels as [Channel];
  const medium = hints.medium ?? main.meaning.medium ?? mediumAbove(read) ?? askMedium(main);
  const depthSaid = medium === 'air' ? null : (main.meaning.depthCm ?? read.table.fixed?.probeDepthCm ?? null);
  const shape = { medium, probeDepthCm: hints.probeDepthCm ?? depthSaid, origin: 'measured' as const };
  yield* toWallClock(read.stores, order, read);
  if (read.time.isDaily && hints.column === null) refuseHalfDays(read.plan.channels);
  if (read.time.isDaily) return yield* settleDays(read, hints, placeZone, order, shape);

  const warnings: Note[] = [];
  const { clock, zone } = yield* settleClock(read, hints, placeZone, order, warnings);
  refuseOverlappingBlocks(read);
  const store = read.stores[0]!;
  const { from, to } = pickBlock(read);
  const stamps = store.stamps().subarray(from, to);
  const values = store.values().subarray(from, to);
  yield;
  dropNowhere(read, stamps, values, from);
  yield;
  const ordered = yield* inTimeOrder(stamps, values, stamps.length);
  yield;
  if (ordered.count === 0) throw nothingRead(read);
  const lost = lostClockRows(stamps.subarray(0, ordered.count));
  const lineOf = (i: number): number => store.lineOf(from + ordered.rowOf(lost + i));
  for (let i = -lost; i < 0; i++) drop(read.dropped, lineOf(i), String(values[lost + i]), rowFact('row.lost-clock'));
  const unit = yield* settleUnit(read, hints, main, values.subarray(0, ordered.count), function* (tried) {
    const copy = { atMs: stamps.slice(lost, ordered.count), values: values.slice(lost, ordered.count) };
    const { readings, days, meanC } = yield* inCelsius(copy, tried, shape, zone, { first: [], count: 0 }, lineOf);
    if (meanC === null || days.length === 0) return null;
    const min = days.reduce((least, day) => Math.min(least, day.min!), Infinity);
    const max = days.reduce((most, day) => Math.max(most, day.max!), -Infinity);
    return { used: readings.atMs.length, min, mean: meanC, max };
  });
  const all = { atMs: stamps.subarray(lost, ordered.count), values: values.subarray(lost, ordered.count) };
  const { doubtful, ...measured } = yield* inCelsius(all, unit, shape, zone, read.dropped, lineOf);
  if (measured.readings.atMs.length === 0) throw nothingRead(read);
  const series: ReadSeries = {
    ...shape,
    ...measured,
    unit: unit.unit,
    zone,
    dayBasis: [],
    dayPlusMinusK: [],
    warnings,
  };
  refuseOtherUnit(series, []);
  warnings.push(
    ...extremeWarnings(main),
    ...unitWarnings(hints, main),
    ...unitDoubts(series),
    ...orderWarnings(ordered),
  );
  return { series, rows: read.rows, file: fileReport(read, order, clock, doubtful) };
}

/** Values become °C, in place; what a working thermometer cannot have written is dropped, the rest folded to days. */
function* inCelsius(
  { atMs, values }: { atMs: Float64Array; values: Float64Array | Float32Array },
  { unit, scale }: ReadingUnit,
  { medium, probeDepthCm }: Pick<ReadSeries, 'medium' | 'probeDepthCm'>,
  zone: Zone,
  dropped: DroppedList,
  lineOf: (i: number) => number,
) {
  const count = atMs.length;
  const toCelsius = celsiusFrom[unit];
  const isCelsius = unit === 'C' && scale === 1;
  for (let i = 0; i < count && !isCelsius; i++) {
    values[i] = toCelsius(scale === 1 ? values[i]! : values[i]! * scale);
    if (i % SLICE === 0) yield;
  }
  const stepMs = usualStepMs(atMs);
  const { code, verdicts } = yield* judgeReadings({
    atMs,
    valueC: values,
    count,
    medium,
    probeDepthCm,
    rawZeroC: toCelsius(0),
    stepMs,
  });
  const doubtful: { list: DoubtfulValue[]; count: number } = { list: [], count: 0 };
  // With no other verdict than the first all are good, and stay where they are.
  let kept = verdicts.length > 1 ? 0 : count;
  for (let i = kept; i < count; i++) {
    if (i % SLICE === 0) yield;
    const verdict = code[i] === 0 ? undefined : verdicts[code[i]!]!;
    if (verdict?.drop) {
      drop(dropped, lineOf(i), shown(values[i]!), verdict.why!, tenth(values[i]!));
      continue;
    }
    if (verdict) {
      doubtful.count++;
      if (doubtful.list.length < MAX_DROPPED) {
        const valueC = tenth(values[i]!);
        doubtful.list.push({ line: lineOf(i), value: shown(valueC), why: verdict.why!, valueC });
      }
    }
    atMs[kept] = atMs[i]!;
    values[kept] = values[i]!;
    kept++;
  }
  // All are measured, which is code 0.
  const readings = { atMs: atMs.subarray(0, kept), valueC: values.subarray(0, kept), basis: new Uint8Array(kept) };
  const usualMs = kept === count ? stepMs : usualStepMs(readings.atMs);
  const { days, meanC } = yield* daysInSlices(readings, zone, longestJoinedMs(usualMs));
  return { readings, days, meanC, usualStepMs: usualMs, doubtful };
}

/** Maxima alone, or minima, would be taken for means. */
function refuseHalfDays(channels: readonly Channel[]): void {
  const [only] = channels;
  const statistic = only?.meaning.statistic;
  if (channels.length > 1 || (statistic !== 'min' && statistic !== 'max')) return;
  throw new RequestError('no-readings', readingsRefusal('no-readings.half-days', { has: statistic }), [
    { parameter: 'column', detail: readingsRefusal('no-readings.half-days.field', { column: only!.name }) },
  ]);
}

function extremeWarnings({ name, meaning }: Channel): Fact[] {
  if (meaning.statistic !== 'min' && meaning.statistic !== 'max') return [];
  return [seriesWarning('extremes-for-readings', { column: name, statistic: meaning.statistic })];
}

const tenth = (valueC: number): number => Math.round(valueC * 10) / 10;
const shown = (valueC: number): string => `${tenth(valueC)} °C`;

const orderWarnings = ({ conflicts }: Ordered): Fact[] =>
  conflicts === 0 ? [] : [seriesWarning('two-values-at-once', { instants: conflicts })];

function mediumAbove({ table }: RowsRead): Medium | null {
  const lines = table.preamble.join(' ');
  const isSoil = /\bsoil|boden|ground temp/i.test(lines);
  const isAir = /\bair temp|lufttemp/i.test(lines);
  return isSoil === isAir ? null : isSoil ? 'soil' : 'air';
}

function askMedium({ name, column }: Channel): never {
  const detail = fileQuestion('choose-medium', { column: name || String(column + 1) });
  const choices = (['soil', 'air'] as const).map((medium) => fileChoice(medium, 'choose-medium.choice', { medium }));
  throw new RequestError(
    'choose-medium',
    [detail, fileQuestion('choose-medium.send')],
    [{ parameter: 'medium', detail, choices }],
  );
}

/** Stamps of days that do not exist are told and left out. */
function dropNowhere(
  read: RowsRead,
  stamps: Float64Array,
  values: Float64Array | Float32Array,
  firstRow: number,
): void {
  const alreadyTold = new Set(read.dropped.first.map(({ line }) => line));
  for (let i = 0; i < stamps.length; i++) {
    if (!Number.isNaN(stamps[i]!)) continue;
    const line = read.stores[0]!.lineOf(firstRow + i);
    if (!alreadyTold.has(line)) drop(read.dropped, line, String(values[i]), rowFact('row.no-such-date'));
  }
}
