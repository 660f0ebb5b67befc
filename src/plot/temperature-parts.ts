import type { Basis } from '../basics/series.js';

/** Provenance of a stretch of temperatures, in a grower's words. */
export type PlotPart = 'measured' | 'modelled' | 'expected';

const PARTS: Readonly<Record<Basis, PlotPart>> = {
  measured: 'measured',
  corrected: 'modelled',
  modelled: 'modelled',
  filled: 'modelled',
  forecast: 'expected',
  'past-years': 'expected',
  drift: 'expected',
  repeated: 'expected',
  'climate-table': 'expected',
};
export const partOf = (basis: Basis): PlotPart => PARTS[basis];

/** Line style of each part, so that parts differ without colour. */
export const DASHES: Readonly<Record<PlotPart, string | undefined>> = {
  measured: undefined,
  modelled: '7 3',
  expected: '1.5 3.5',
};

/** A stretch of points with one provenance. */
export interface Stretch<Point> {
  readonly part: PlotPart;
  readonly points: readonly Point[];
}

/**
 * Splits points into stretches of one part each, and where `joins` says that two do not follow on one another. A joined
 * stretch begins with the last point of the one before, so that the line has no hole.
 */
export function stretches<Point extends { readonly part: PlotPart }>(
  points: readonly Point[],
  joins: (before: Point, after: Point) => boolean,
): Stretch<Point>[] {
  const all: { part: PlotPart; points: Point[] }[] = [];
  points.forEach((point, i) => {
    const before = points[i - 1];
    const isJoined = before !== undefined && joins(before, point);
    const open = all.at(-1);
    if (isJoined && open?.part === point.part) open.points.push(point);
    else all.push({ part: point.part, points: isJoined ? [before, point] : [point] });
  });
  return all;
}
