import { HOUR_MS } from '../../basics/calendar.js';
import type { ClockSpan } from './clock-spans.js';

/** Longer steps jump over a changed hour, and prove nothing of it. */
const MAX_PROVING_STEP_MS = HOUR_MS;
/** This share of the rows that would stand in a changed hour proves that it was not changed. */
const PROVING_SHARE = 0.5;

/** Rows that follow one another in the same skipped or repeated hour, and the wall clock that comes next. */
export interface HourRows {
  readonly rows: readonly number[];
  readonly walls: readonly number[];
  readonly nextWall: number;
  readonly endK: number;
}

/** A block with what came before it. */
export interface HourPassage {
  readonly block: HourRows;
  readonly span: ClockSpan;
  readonly before: number;
  readonly beforeInstant: number;
  readonly alike: number;
  readonly usualMs: number;
}

export function rowsInHour(
  span: ClockSpan,
  wallMs: Float64Array,
  fromK: number,
  count: number,
  row: (k: number) => number,
): HourRows {
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
export function offsetsThrough(through: HourPassage): number[] {
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
      Number.isNaN(step) ? 0 : Math.min(MAX_PROVING_STEP_MS, Math.abs(step - usualMs));
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
export function isUnbroken({ block: { walls, nextWall }, span, before, usualMs }: HourPassage): boolean {
  if (!(usualMs > 0 && usualMs <= MAX_PROVING_STEP_MS)) return false;
  if (walls.length < (PROVING_SHARE * (span.toMs - span.fromMs)) / usualMs) return false;
  // Longer steps pass a repeated half hour but once, whatever the clock does.
  if (span.kind === 'twice' && usualMs > span.toMs - span.fromMs) return false;
  const isStep = (from: number, to: number): boolean => to >= from && to - from <= MAX_PROVING_STEP_MS;
  const isEdge = (from: number, to: number): boolean =>
    (span.kind === 'never' && Number.isNaN(to - from)) || isStep(from, to);
  if (Number.isNaN(before) && Number.isNaN(nextWall)) return false;
  return (
    isEdge(before, walls[0]!) &&
    isEdge(walls.at(-1)!, nextWall) &&
    walls.every((wall, n) => n === 0 || isStep(walls[n - 1]!, wall))
  );
}
