import { dateAt, fixedZone, type PlainDate, type Zone } from '../../basics/calendar.js';

const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;
const SLICE = 100_000;
const STEPS_LOOKED_AT = 10_000;
/** Longer steps jump over a changed hour, and prove nothing of it. */
const LONGEST_PROVING_STEP_MS = HOUR_MS;
/** This share of the rows that would stand in a changed hour proves that it was not changed. */
const PROVING_SHARE = 0.5;

/** What came of turning wall clocks into instants. */
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

/** A stretch of the wall clock: shown once, never, or twice. */
interface Span {
  readonly kind: 'once' | 'never' | 'twice';
  readonly fromMs: number;
  readonly toMs: number;
  /** Of `once` the offset, of `twice` the one of the first pass and that of the second. */
  readonly offsetMs: number;
  readonly laterOffsetMs: number;
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
  let span: Span | undefined;
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
    const block = blockIn(span, wallMs, k, count, row);
    const through: Through = { block, span, before, beforeInstant, alike, usualMs };
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
  { fromMs, toMs, offsetMs }: Span,
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

/** Rows that follow one another in the same skipped or repeated hour, and the wall clock that comes next. */
interface Block {
  readonly rows: readonly number[];
  readonly walls: readonly number[];
  readonly nextWall: number;
  readonly endK: number;
}

/** A block with what came before it. */
interface Through {
  readonly block: Block;
  readonly span: Span;
  readonly before: number;
  readonly beforeInstant: number;
  readonly alike: number;
  readonly usualMs: number;
}

function blockIn(span: Span, wallMs: Float64Array, fromK: number, count: number, row: (k: number) => number): Block {
  const rows: number[] = [];
  const walls: number[] = [];
  let k = fromK;
  for (; k < count; k++) {
    const wall = wallMs[row(k)]!;
    if (Number.isNaN(wall)) continue;
    if (wall < span.fromMs || wall >= span.toMs) break;
    rows.push(row(k));
    walls.push(wall);
  }
  return { rows, walls, nextWall: k < count ? wallMs[row(k)]! : NaN, endK: k };
}

/** The offset of each row in a repeated hour. */
function offsetsThrough(through: Through): number[] {
  const { block, span, before, beforeInstant, alike, usualMs } = through;
  const { walls, nextWall } = block;
  const { offsetMs: early, laterOffsetMs: late } = span;
  const stepsBack = walls.flatMap((wall, n) => (n > 0 && wall < walls[n - 1]! ? [n] : []));
  if (stepsBack.length > 1) return nearest(walls, beforeInstant, early, late);
  const split = stepsBack[0] ?? splitOfAlike(walls, Math.max(1, alike));
  if (split !== undefined) return walls.map((_, n) => (n < split ? early : late));
  // Passed once: the pass is the one that leaves the steps on both sides nearest to the usual.
  const unevenness = (offset: number): number => {
    const stepBefore = walls[0]! - before + (early - offset);
    const stepAfter = nextWall - walls.at(-1)! + (offset - late);
    const isOff = (step: number): number =>
      Number.isNaN(step) ? 0 : Math.min(LONGEST_PROVING_STEP_MS, Math.abs(step - usualMs));
    return isOff(stepBefore) + isOff(stepAfter);
  };
  return walls.map(() => (unevenness(late) < unevenness(early) ? late : early));
}

/** Where readings are an hour apart, both passes of the repeated hour carry one and the same wall time; the second pass
 * begins after as many rows as each of the file's other times has. */
function splitOfAlike(walls: readonly number[], alike: number): number | undefined {
  return walls.length >= 2 * alike && walls.every((wall) => wall === walls[0]) ? alike : undefined;
}

/** Where rows jump to and fro, each is taken to be near the one before it. */
function nearest(walls: readonly number[], beforeInstant: number, early: number, late: number): number[] {
  let last = beforeInstant;
  return walls.map((wall) => {
    const offset = Math.abs(wall - late - last) < Math.abs(wall - early - last) ? late : early;
    last = wall - offset;
    return offset;
  });
}

/** Do the rows run through a changed hour in steps as everywhere, with the rows on both sides? */
function isUnbroken({ block: { walls, nextWall }, span, before, usualMs }: Through): boolean {
  if (!(usualMs > 0 && usualMs <= LONGEST_PROVING_STEP_MS)) return false;
  if (walls.length < (PROVING_SHARE * (span.toMs - span.fromMs)) / usualMs) return false;
  // Longer steps pass a repeated half hour but once, whatever the clock does.
  if (span.kind === 'twice' && usualMs > span.toMs - span.fromMs) return false;
  const isStep = (from: number, to: number): boolean => to >= from && to - from <= LONGEST_PROVING_STEP_MS;
  const isEdge = (from: number, to: number): boolean =>
    (span.kind === 'never' && Number.isNaN(to - from)) || isStep(from, to);
  if (Number.isNaN(before) && Number.isNaN(nextWall)) return false;
  return (
    isEdge(before, walls[0]!) &&
    isEdge(walls.at(-1)!, nextWall) &&
    walls.every((wall, n) => n === 0 || isStep(walls[n - 1]!, wall))
  );
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

const yearOf = (wallMs: number): number => new Date(wallMs).getUTCFullYear();
const dateOf = (wallMs: number): PlainDate => dateAt(wallMs, UTC);
const UTC = fixedZone(0);

/** Finds the stretch that a wall clock lies in; a year's stretches are made once. */
function spansOf(zone: Zone): (wallMs: number) => Span {
  const years = new Map<number, readonly Span[]>();
  return (wallMs) => {
    const year = yearOf(wallMs);
    let spans = years.get(year);
    if (!spans) {
      spans = spansOfYear(zone, year);
      years.set(year, spans);
    }
    return spans.find(({ toMs }) => wallMs < toMs)!;
  };
}

/** The stretches of a year's wall clock, without gaps between them. */
function spansOfYear(zone: Zone, year: number): Span[] {
  const [yearFrom, yearTo] = [Date.UTC(year, 0, 1), Date.UTC(year + 1, 0, 1)];
  const spans: Span[] = [];
  let fromMs = yearFrom;
  const add = (kind: Span['kind'], toMs: number, offsetMs: number, laterOffsetMs: number): void => {
    const end = Math.min(toMs, yearTo);
    if (end > fromMs) {
      spans.push({ kind, fromMs, toMs: end, offsetMs, laterOffsetMs });
      fromMs = end;
    }
  };
  let offsetMs = zone.offsetMs(yearFrom - 2 * DAY_MS);
  for (const { atMs, offsetMs: next } of changesOf(zone, yearFrom - 2 * DAY_MS, yearTo + 2 * DAY_MS)) {
    add('once', atMs + Math.min(offsetMs, next), offsetMs, offsetMs);
    add(next > offsetMs ? 'never' : 'twice', atMs + Math.max(offsetMs, next), offsetMs, next);
    offsetMs = next;
  }
  add('once', Infinity, offsetMs, offsetMs);
  return spans;
}

/** The instants at which a zone's offset changes, and what it changes to; they are more than a day apart. */
function changesOf(zone: Zone, fromMs: number, toMs: number): { atMs: number; offsetMs: number }[] {
  const changes: { atMs: number; offsetMs: number }[] = [];
  for (let day = fromMs; day < toMs; day += DAY_MS) {
    const offsetMs = zone.offsetMs(day + DAY_MS);
    if (offsetMs === zone.offsetMs(day)) continue;
    let [before, after] = [day, day + DAY_MS];
    while (after - before > 1) {
      const middle = Math.floor((before + after) / 2);
      if (zone.offsetMs(middle) === offsetMs) after = middle;
      else before = middle;
    }
    changes.push({ atMs: after, offsetMs });
  }
  return changes;
}

/**
 * A zone's standard offset in a year [ms ahead of UTC]: the smaller of the offsets that its clocks have in it.
 *
 * @param zone - the place's
 * @param year - a calendar year
 */
export function standardOffsetMs(zone: Zone, year: number): number {
  let least = Infinity;
  for (let ms = Date.UTC(year, 0, 1); ms < Date.UTC(year + 1, 0, 1); ms += DAY_MS) {
    least = Math.min(least, zone.offsetMs(ms));
  }
  return least;
}
