import { scaleLinear, scaleLog } from 'd3-scale';
import { lettering, paragraph, TYPE, widthOf } from '../lettering.js';
import type { Sheet } from '../picture.js';
import { rungs } from '../rungs.js';
import { type Corner, type LinearScale, lineThrough } from '../shapes.js';
import { element, tenth } from '../svg.js';
import { paint } from '../theme.js';
import { cellOf, type DrawnRow, roundedDays } from './drawn-crop.js';

/** Points of the rate drawn between two cells. */
const PIECES = 12;

/** A part of the picture with an axis of its own; the parts are drawn in layers. */
export interface Panel {
  readonly top: number;
  readonly bottom: number;
  readonly grid: string;
  readonly caption: string;
  readonly drawn: string;
}

/** Where a panel stands: from which height on, and between which edges its axis runs [px]. */
interface Frame {
  readonly fromY: number;
  readonly left: number;
  readonly right: number;
}

/** Days to half emergence over temperature, on an axis of equal ratios. */
export function daysPanel(
  rows: readonly DrawnRow[],
  xOf: (tempC: number) => number,
  sheet: Sheet,
  { fromY, ...edges }: Frame,
): Panel {
  const caption = captionOf('picture.days-to-half', fromY, sheet);
  const top = caption.toY + 12;
  const bottom = top + (sheet.isWide ? 170 : 150);
  const timed = rows.filter((row) => cellOf(row) === 'timed');
  const y = scaleLog()
    .domain(daysDomain(timed.map(({ days }) => days!)))
    .range([bottom, top]);
  const dots = timed.map(({ temperatureC, days }) =>
    dot(xOf(temperatureC), y(days!), String(roundedDays(days!)), sheet),
  );
  return {
    top,
    bottom,
    grid: gridOfDays(y, edges),
    caption: caption.drawn,
    drawn: [...daysLines(rows, xOf, y), ...dots].join(''),
  };
}

/** Percent of seedlings over temperature. */
export function percentPanel(
  rows: readonly DrawnRow[],
  xOf: (tempC: number) => number,
  sheet: Sheet,
  { fromY, ...edges }: Frame,
): Panel {
  const caption = captionOf('picture.seedlings', fromY, sheet);
  const top = caption.toY + 14;
  const bottom = top + (sheet.isWide ? 110 : 96);
  const y = scaleLinear().domain([0, 100]).range([bottom, top]);
  const counted = rows.filter(({ percent }) => percent !== null);
  const dots = counted.map(({ temperatureC, percent }) =>
    dot(xOf(temperatureC), y(percent!), `${Math.round(percent!)}`, sheet),
  );
  return {
    top,
    bottom,
    grid: rungs(y, 3, edges, ''),
    caption: caption.drawn,
    drawn: [percentLine(counted, xOf, y), ...dots].join(''),
  };
}

const captionOf = (code: 'picture.days-to-half' | 'picture.seedlings', y: number, { left, right, say }: Sheet) =>
  paragraph({ x: left, width: right - left, y }, say({ code, params: {} }), { size: TYPE.small });

/** Range of the axis of days: whole steps of 1, 2, 5 around all values. */
function daysDomain(days: readonly number[]): [number, number] {
  const least = days.length === 0 ? 1 : Math.min(...days);
  const most = days.length === 0 ? 100 : Math.max(...days);
  const low = DAY_STEPS.findLast((step) => step <= least) ?? least;
  const high = DAY_STEPS.find((step) => step >= most) ?? most;
  return [low, Math.max(high, low * 2)];
}

const DAY_STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

const gridOfDays = (y: LinearScale, edges: { readonly left: number; readonly right: number }): string =>
  DAY_STEPS.filter((step) => step >= y.domain()[0]! && step <= y.domain()[1]!)
    .map(
      (step) =>
        element('path', { d: `M${edges.left},${tenth(y(step))} H${edges.right}`, ...paint({ stroke: 'rule' }) }) +
        lettering(edges.left - 6, y(step) + 4, `${step}`, { size: TYPE.small, colour: 'quiet', anchor: 'end' }),
    )
    .join('');

/** The rate, 1/days, is linear between timed cells, as in the forecast; dashed across untested temperatures. */
function daysLines(rows: readonly DrawnRow[], xOf: (tempC: number) => number, y: LinearScale): string[] {
  const lines: string[] = [];
  let before: DrawnRow | null = null;
  let isSkipping = false;
  for (const row of rows) {
    const cell = cellOf(row);
    if (cell === 'not-tested') isSkipping = true;
    else if (cell === 'none-came') before = null;
    else {
      if (before) {
        const [from, to] = [before, row];
        const corners = Array.from({ length: PIECES + 1 }, (_, i): Corner => {
          const share = i / PIECES;
          const tempC = from.temperatureC + share * (to.temperatureC - from.temperatureC);
          return [xOf(tempC), y(1 / ((1 - share) / from.days! + share / to.days!))];
        });
        lines.push(curve(corners, isSkipping));
      }
      before = row;
      isSkipping = false;
    }
  }
  return lines;
}

const percentLine = (counted: readonly DrawnRow[], xOf: (tempC: number) => number, y: LinearScale): string =>
  counted.length < 2
    ? ''
    : curve(
        counted.map(({ temperatureC, percent }): Corner => [xOf(temperatureC), y(percent!)]),
        false,
      );

const curve = (corners: readonly Corner[], isDashed: boolean): string =>
  element('path', {
    d: lineThrough(corners) ?? undefined,
    ...paint({ stroke: 'accent' }),
    'stroke-width': 2,
    'stroke-dasharray': isDashed ? '3 4' : undefined,
  });

/** A tested cell with its number above it. */
const dot = (x: number, y: number, text: string, { right }: Sheet): string => {
  const half = widthOf(text, TYPE.small) / 2;
  return (
    element('circle', { cx: x, cy: y, r: 4.5, ...paint({ fill: 'accent', stroke: 'paper' }), 'stroke-width': 1.5 }) +
    lettering(Math.min(x, right - half), y - 8, text, { size: TYPE.small, anchor: 'middle' })
  );
};
