import { DAY_MS, type Zone } from '../../basics/calendar.js';

/** A stretch of the wall clock: shown once, never, or twice. */
export interface ClockSpan {
  readonly kind: 'once' | 'never' | 'twice';
  readonly fromMs: number;
  readonly toMs: number;
  /** The offset of `once`; the offsets of the first and the second pass of `twice`. */
  readonly offsetMs: number;
  readonly laterOffsetMs: number;
}

export const yearOf = (wallMs: number): number => new Date(wallMs).getUTCFullYear();

/** Finds the stretch that a wall clock lies in; a year's stretches are made once. */
export function spansOf(zone: Zone): (wallMs: number) => ClockSpan {
  const years = new Map<number, readonly ClockSpan[]>();
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
function spansOfYear(zone: Zone, year: number): ClockSpan[] {
  const [yearFrom, yearTo] = [Date.UTC(year, 0, 1), Date.UTC(year + 1, 0, 1)];
  const spans: ClockSpan[] = [];
  let fromMs = yearFrom;
  const add = (kind: ClockSpan['kind'], toMs: number, offsetMs: number, laterOffsetMs: number): void => {
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
