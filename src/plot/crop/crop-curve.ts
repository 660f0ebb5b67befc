import { inUnit } from '../degrees.js';
import { inRows, lettering, paragraph, TYPE } from '../lettering.js';
import { type PictureOptions, picture, sheetOf } from '../picture.js';
import { element, tenth } from '../svg.js';
import { paint } from '../theme.js';
import { daysPanel, type Panel, percentPanel } from './crop-panels.js';
import { gist, inWords, limitsOf, titleOf } from './crop-words.js';
import { type DrawnCrop, rowsOf } from './drawn-crop.js';
import { cellLane, temperatureAxis, temperatureScale } from './temperature-axis.js';

/** Height of a row of labels [px]. */
const LABEL_ROW = 17;

/** The crop's curve: days to half emergence and percent over temperature, cells tested, failed and untested. */
export function cropCurve(crop: DrawnCrop, options: PictureOptions): string {
  const sheet = sheetOf(options);
  const rows = rowsOf(crop);
  const box = { x: sheet.left, width: sheet.right - sheet.left };
  const x = temperatureScale(crop, rows, sheet);
  const xOf = (tempC: number): number => x(inUnit(tempC, sheet.unit));
  const [left, right] = x.range() as [number, number];

  const title = paragraph({ ...box, y: 14 }, titleOf(crop, sheet.say), { size: TYPE.title, bold: true });
  const subtitle = paragraph({ ...box, y: title.toY }, gist(crop, rows, sheet), { colour: 'quiet' });
  const limits = limitsOf(crop, sheet)
    .map((limit) => ({ ...limit, x: xOf(limit.tempC) }))
    .filter(({ x: at }) => at >= left && at <= right);
  const labels = inRows(limits, { from: sheet.left, to: sheet.right });
  const labelRows = labels.reduce((most, { row }) => Math.max(most, row + 1), 0);
  const labelsY = subtitle.toY + 4;
  const labelsToY = labelsY + labelRows * LABEL_ROW;

  const days = daysPanel(rows, xOf, sheet, { fromY: labelsToY + 6, left, right });
  const percent = percentPanel(rows, xOf, sheet, { fromY: days.bottom + 14, left, right });
  const axis = temperatureAxis(x, sheet, percent.bottom);
  const cells = cellLane(rows, xOf, sheet, axis.toY + 6);
  const limitLines = limits.map(({ x: at }) =>
    element('path', {
      d: `M${tenth(at)},${tenth(labelsToY + 2)} V${tenth(percent.bottom)}`,
      ...paint({ stroke: 'quiet' }),
      'stroke-dasharray': '2 3',
    }),
  );
  return picture(
    sheet,
    cells.toY + 10,
    { title: titleOf(crop, sheet.say), description: inWords(crop, rows, sheet), hatches: [] },
    [
      title.drawn,
      subtitle.drawn,
      ...bestTemperatures(crop, xOf, { left, right }, [days, percent]),
      days.grid,
      percent.grid,
      ...limitLines,
      days.caption,
      percent.caption,
      days.drawn,
      percent.drawn,
      axis.drawn,
      cells.drawn,
      ...labels.map(({ middle, row, text }) =>
        lettering(middle, labelsY + (labelRows - row) * LABEL_ROW - 2, text, { size: TYPE.small, anchor: 'middle' }),
      ),
    ].join(''),
  );
}

/** The ground behind each panel where the soil is best. */
function bestTemperatures(
  { soil }: DrawnCrop,
  xOf: (tempC: number) => number,
  edges: { readonly left: number; readonly right: number },
  panels: readonly Panel[],
): string[] {
  if (!soil) return [];
  const left = Math.max(edges.left, xOf(soil.optimumFromC));
  const right = Math.min(edges.right, xOf(soil.optimumToC));
  if (right <= left) return [];
  return panels.map(({ top, bottom }) =>
    element('rect', { x: left, y: top, width: right - left, height: bottom - top, ...paint({ fill: 'good' }) }),
  );
}
