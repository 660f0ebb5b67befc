import { scaleLinear } from 'd3-scale';
import { inUnit } from '../degrees.js';
import { lettering, TYPE, widthOf } from '../lettering.js';
import type { Sheet } from '../picture.js';
import type { LinearScale } from '../shapes.js';
import { element, tenth } from '../svg.js';
import { paint } from '../theme.js';
import { CELLS, type Cell, cellOf, type DrawnCrop, type DrawnRow } from './drawn-crop.js';

/** The horizontal scale: all temperatures tested, and the limits of the soil, with some room beside them. */
export function temperatureScale(
  { soil }: DrawnCrop,
  rows: readonly DrawnRow[],
  { unit, axisX, right }: Sheet,
): LinearScale {
  const tempsC = [...rows.map(({ temperatureC }) => temperatureC), ...(soil ? [soil.minimumC, soil.maximumC] : [])];
  const low = tempsC.length === 0 ? 0 : Math.min(...tempsC);
  const high = tempsC.length === 0 ? 40 : Math.max(...tempsC);
  const spare = Math.max(1.5, (high - low) * 0.04);
  return scaleLinear()
    .domain([inUnit(low - spare, unit), inUnit(high + spare, unit)])
    .range([axisX, right]);
}

/** The axis below the panels. */
export function temperatureAxis(x: LinearScale, { unit, isWide, right }: Sheet, y: number) {
  const [fromX, toX] = x.range() as [number, number];
  const ticks = x.ticks(isWide ? 10 : 5).map((value) => {
    const at = x(value);
    const tick = element('path', { d: `M${tenth(at)},${tenth(y)} v6`, ...paint({ stroke: 'quiet' }) });
    const text = `${value} °${unit}`;
    const middle = Math.min(at, right - widthOf(text, TYPE.small) / 2);
    return tick + lettering(middle, y + 20, text, { size: TYPE.small, colour: 'quiet', anchor: 'middle' });
  });
  return {
    drawn: element('path', { d: `M${fromX},${tenth(y)} H${toX}`, ...paint({ stroke: 'quiet' }) }) + ticks.join(''),
    toY: y + 26,
  };
}

/** The mark of a cell's kind. */
function mark(cell: Cell, x: number, y: number): string {
  if (cell === 'timed') return element('circle', { cx: x, cy: y, r: 4.5, ...paint({ fill: 'accent' }) });
  if (cell === 'not-tested') {
    return element('circle', { cx: x, cy: y, r: 4.5, ...paint({ stroke: 'quiet' }), 'stroke-width': 1.5 });
  }
  return element('path', {
    d: `M${tenth(x - 4.5)},${tenth(y - 4.5)} l9,9 m0,-9 l-9,9`,
    ...paint({ stroke: 'ink' }),
    'stroke-width': 2,
  });
}

/** A lane with the test result at each temperature, and the legend of the marks. */
export function cellLane(
  rows: readonly DrawnRow[],
  xOf: (tempC: number) => number,
  { left, right, say }: Sheet,
  fromY: number,
) {
  const marks = rows.map((row) => mark(cellOf(row), xOf(row.temperatureC), fromY + 6));
  let x = left;
  let y = fromY + 30;
  const legend = CELLS.filter((cell) => rows.some((row) => cellOf(row) === cell)).map((cell) => {
    const text = say({ code: 'picture.cell', params: { cell, at: null } });
    const width = 18 + widthOf(text, TYPE.small) + 14;
    if (x > left && x + width > right) {
      x = left;
      y += 20;
    }
    const drawn = mark(cell, x + 6, y - 4) + lettering(x + 18, y, text, { size: TYPE.small });
    x += width;
    return drawn;
  });
  return { drawn: marks.join('') + legend.join(''), toY: y + 4 };
}
