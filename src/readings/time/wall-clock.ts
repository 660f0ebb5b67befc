import { dateAt, fixedZone, type PlainDate, type Zone } from '../../basics/calendar.js';
import { type HourPassage, isUnbroken, offsetsThrough, rowsInHour } from './changed-hour.js';
import { type ClockSpan, spansOf, standardOffsetMs, yearOf } from './clock-spans.js';

const SLICE = 100_000;
const STEPS_LOOKED_AT = 10_000;

/** Result of converting wall clocks into instants. */
export interface WallClockResult {
  /** Rows that stand in an hour which the clocks skipped; left NaN. */
  readonly missing: readonly number[];
  /** Clock changes at which the rows pass the repeated hour twice. */
  readonly repeatedHours: number;
  /**
   * Dates of clock changes, `YYYY-MM-DD`, through which the rows run on in unbroken steps of at most an hour: they stand
   * in the skipped hour, or pass the repeated one only once. It proves that this clock is not changed.
   */
  readonly steadyThrough: readonly PlainDate[];
}

/**
 * Turns wall clocks into instants, in place, and in slices of 100,000 rows. The first pass through a repeated hour ends
 * where the wall clock steps back. The row order decides; a file with the newest row first is gone through from its end.
 *
 * @param wallMs - wall clocks [ms, as if in UTC], NaN where there is none; becomes instants
 * @param count - rows, from the first
 * @param zone - the place's
 * @param clock - `local`: changed in spring and autumn; `standard`: the smaller of the year's offsets all year
 */
export function* instantsOfWallClock(
  wallMs: Float64Array,
  count: number,
  zone: Zone,
  clock: 'local' | 'standard',
): Generator<void, WallClockResult> {
  return clock === 'standard' ? yield* toStandard(wallMs, count, zone) : yield* toLocal(wallMs, count, zone);
}

function* toStandard(wallMs: Float64Array, count: number, zone: Zone): Generator<void, WallClockResult> {
  let [fromMs, toMs, offsetMs] = [NaN, NaN, 0];
  for (let i = 0; i < count; i++) {
    if (i % SLICE === SLICE - 1) yield;
    const wall = wallMs[i]!;
    if (!(wall >= fromMs && wall < toMs)) {
      if (Number.isNaN(wall)) continue;
      const year = yearOf(wall);
      [fromMs, toMs, offsetMs] = [Date.UTC(year, 0, 1), Date.UTC(year + 1, 0, 1), standardOffsetMs(zone, year)];
    }
    wallMs[i] = wall - offsetMs;
  }
  return { missing: [], repeatedHours: 0, steadyThrough: [] };
}

function* toLocal(wallMs: Float64Array, count: number, zone: Zone): Generator<void, WallClockResult> {
  const spanAt = spansOf(zone);
  const { usualMs, isNewestFirst } = runOf(wallMs, count);
  /** The row that comes k-th in time, as far as the file is in order. */
  const row = (k: number): number => (isNewestFirst ? count - 1 - k : k);
  const missing: number[] = [];
  const steady = new Set<PlainDate>();
  let repeatedHours = 0;
  let span: ClockSpan | undefined;
  let [before, beforeInstant, alike] = [NaN, NaN, 0];
  let pauseAt = SLICE;
  for (let k = 0; k < count; k++) {
    if (k >= pauseAt) {
      pauseAt = k + SLICE;
      yield;
    }
    const wall = wallMs[row(k)]!;
    if (Number.isNaN(wall)) continue;
    if (!span || wall < span.fromMs || wall >= span.toMs) span = spanAt(wall);
    if (span.kind === 'once') {
      const along = alongSpan(span, wallMs, row(k), isNewestFirst ? -1 : 1, Math.min(SLICE, count - k), before, alike);
      ({ before, alike } = along);
      beforeInstant = before - span.offsetMs;
      k += along.rows - 1;
      continue;
    }
    const block = rowsInHour(span, wallMs, k, count, row);
    const through: HourPassage = { block, span, before, beforeInstant, alike, usualMs };
    before = block.walls.at(-1)!;
    alike = 1;
    k = block.endK - 1;
    if (span.kind === 'never') {
      for (const at of block.rows) {
        wallMs[at] = NaN;
        missing.push(at);
      }
      beforeInstant = NaN;
      if (isUnbroken(through)) steady.add(dateOf(span.fromMs));
      continue;
    }
    const offsets = offsetsThrough(through);
    block.rows.forEach((at, n) => {
      wallMs[at] = block.walls[n]! - offsets[n]!;
    });
    beforeInstant = before - offsets.at(-1)!;
    const passes = new Set(offsets).size;
    if (passes === 2) repeatedHours++;
    else if (isUnbroken(through)) steady.add(dateOf(span.fromMs));
  }
  return { missing: missing.sort((a, b) => a - b), repeatedHours, steadyThrough: [...steady].sort() };
}

/**
 * Turns the wall clocks of the next rows into instants, in place, as long as they lie in a stretch that is shown once.
 *
 * @param from  The first row.
 * @param step  1: rows are taken in the order of the file; -1: against it.
 * @param most  No more rows than this are taken.
 * @param before The last wall clock before.
 * @param alike  How many rows in turn show that wall clock, as sensors that take turns do.
 */
function alongSpan(
  { fromMs, toMs, offsetMs }: ClockSpan,
  wallMs: Float64Array,
  from: number,
  step: 1 | -1,
  most: number,
  before: number,
  alike: number,
): { rows: number; before: number; alike: number } {
  let rows = 0;
  let lastAt = -1;
  for (let at = from; rows < most; at += step, rows++) {
    const wall = wallMs[at]!;
    if (wall < fromMs || wall >= toMs) break;
    if (!(wall >= fromMs)) continue;
    wallMs[at] = wall - offsetMs;
    lastAt = at;
  }
  if (lastAt < 0) return { rows, before, alike };
  const lastMs = wallMs[lastAt]!;
  let times = 0;
  let at = from + (rows - 1) * step;
  for (let left = rows; left > 0; left--, at -= step) {
    if (wallMs[at] === lastMs) times++;
    else if (!Number.isNaN(wallMs[at]!)) return { rows, before: lastMs + offsetMs, alike: times };
  }
  // All of these rows show one wall clock, perhaps that of the rows before.
  return { rows, before: lastMs + offsetMs, alike: lastMs + offsetMs === before ? alike + times : times };
}

/** The usual step of the first rows [ms], and whether the file runs backwards. */
function runOf(wallMs: Float64Array, count: number): { usualMs: number; isNewestFirst: boolean } {
  const looked = new Float64Array(Math.min(count, STEPS_LOOKED_AT));
  let found = 0;
  let before = NaN;
  let back = 0;
  for (let i = 0; i < count && found < looked.length; i++) {
    const wall = wallMs[i]!;
    if (Number.isNaN(wall)) continue;
    const step = wall - before;
    if (step < 0) back++;
    if (step < 0 || step > 0) looked[found++] = Math.abs(step);
    before = wall;
  }
  const steps = looked.subarray(0, found).sort();
  return { usualMs: steps[found >> 1] ?? NaN, isNewestFirst: back > found / 2 };
}

const dateOf = (wallMs: number): PlainDate => dateAt(wallMs, UTC);
const UTC = fixedZone(0);
