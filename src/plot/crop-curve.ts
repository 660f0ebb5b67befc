import { scaleLinear, scaleLog } from 'd3-scale';
import { degrees, degreesSpan, inUnit } from './degrees.js';
import { inRows, lettering, paragraph, TYPE, widthOf } from './lettering.js';
import { type PictureOptions, picture, type Sheet, sheetOf } from './picture.js';
import type { SayPicture } from './picture-facts.js';
import { rungs } from './rungs.js';
import { type Corner, type LinearScale, lineThrough } from './shapes.js';
import { element, tenth } from './svg.js';
import { paint } from './theme.js';

/** The response to one constant temperature. */
export interface DrawnRow {
  readonly temperatureC: number;
  /** `true` with `days: null`: tested, and none or too few emerged. `false`: never tested. */
  readonly tested: boolean;
  readonly days: number | null;
  readonly percent: number | null;
}

/** The rendered part of a crop; an answer of /v1/crops/{id} has it all. */
export interface DrawnCrop {
  readonly id: string;
  readonly name: string;
  readonly latinName?: string | null;
  readonly rows: readonly DrawnRow[];
  readonly soil: {
    readonly minimumC: number;
    readonly optimumFromC: number;
    readonly optimumToC: number;
    readonly maximumC: number;
  } | null;
  readonly hotThresholdC: number;
}

type Cell = 'timed' | 'none-came' | 'not-tested';
const cellOf = ({ tested, days }: DrawnRow): Cell => (tested ? (days === null ? 'none-came' : 'timed') : 'not-tested');
const CELLS: readonly Cell[] = ['timed', 'none-came', 'not-tested'];
/** Points of the rate drawn between two cells. */
const PIECES = 12;

/** Faster seed cannot be drawn, and there is none: no seed emerges within a quarter of an hour [d]. */
const MIN_DAYS = 0.01;

/** The crop's curve: days to half emergence and percent over temperature, cells tested, failed and untested. */
export function cropCurve(crop: DrawnCrop, options: PictureOptions): string {
  const sheet = sheetOf(options);
  const { unit, say } = sheet;
  const rows = rowsOf(crop);
  const box = { x: sheet.left, width: sheet.right - sheet.left };
  const x = temperatureScale(crop, rows, sheet);
  const xOf = (tempC: number): number => x(inUnit(tempC, unit));
  const [fromX, toX] = x.range() as [number, number];

  const title = paragraph({ ...box, y: 14 }, titleOf(crop, say), { size: TYPE.title, bold: true });
  const said = paragraph({ ...box, y: title.toY }, gist(crop, rows, sheet), { colour: 'quiet' });
  const limits = limitsOf(crop, sheet)
    .map((limit) => ({ ...limit, x: xOf(limit.tempC) }))
    .filter(({ x: at }) => at >= fromX && at <= toX);
  const labels = inRows(limits, { from: sheet.left, to: sheet.right });
  const labelRows = labels.reduce((most, { row }) => Math.max(most, row + 1), 0);
  const labelsY = said.toY + 4;

  const daysCaption = paragraph(
    { ...box, y: labelsY + labelRows * 17 + 6 },
    say({ code: 'picture.days-to-half', params: {} }),
    {
      size: TYPE.small,
    },
  );
  const daysTop = daysCaption.toY + 12;
  const daysBottom = daysTop + (sheet.isWide ? 170 : 150);
  const timed = rows.filter((row) => cellOf(row) === 'timed');
  const daysY = scaleLog()
    .domain(daysDomain(timed.map(({ days }) => days!)))
    .range([daysBottom, daysTop]);
  const percentCaption = paragraph({ ...box, y: daysBottom + 14 }, say({ code: 'picture.seedlings', params: {} }), {
    size: TYPE.small,
  });
  const percentTop = percentCaption.toY + 14;
  const percentBottom = percentTop + (sheet.isWide ? 110 : 96);
  const percentY = scaleLinear().domain([0, 100]).range([percentBottom, percentTop]);
  const counted = rows.filter(({ percent }) => percent !== null);

  const ground = crop.soil
    ? [
        [daysTop, daysBottom],
        [percentTop, percentBottom],
      ].map(([top, bottom]) => {
        const [left, right] = [
          Math.max(fromX, xOf(crop.soil!.optimumFromC)),
          Math.min(toX, xOf(crop.soil!.optimumToC)),
        ];
        return right > left
          ? element('rect', {
              x: left,
              y: top!,
              width: right - left,
              height: bottom! - top!,
              ...paint({ fill: 'good' }),
            })
          : '';
      })
    : [];
  const axis = temperatureAxis(x, sheet, percentBottom);
  const cells = cellLane(rows, xOf, sheet, axis.toY + 6);
  const limitLines = limits.map(({ x: at }) =>
    element('path', {
      d: `M${tenth(at)},${tenth(labelsY + labelRows * 17 + 2)} V${tenth(percentBottom)}`,
      ...paint({ stroke: 'quiet' }),
      'stroke-dasharray': '2 3',
    }),
  );
  return picture(
    sheet,
    cells.toY + 10,
    { title: titleOf(crop, say), description: inWords(crop, rows, sheet), hatches: [] },
    [
      title.drawn,
      said.drawn,
      ...ground,
      gridOfDays(daysY, { left: fromX, right: toX }),
      rungs(percentY, 3, { left: fromX, right: toX }, ''),
      ...limitLines,
      daysCaption.drawn,
      percentCaption.drawn,
      ...daysLines(rows, xOf, daysY),
      ...timed.map(({ temperatureC, days }) => dot(xOf(temperatureC), daysY(days!), String(roundedDays(days!)), sheet)),
      percentLine(counted, xOf, percentY),
      ...counted.map(({ temperatureC, percent }) =>
        dot(xOf(temperatureC), percentY(percent!), `${Math.round(percent!)}`, sheet),
      ),
      axis.drawn,
      cells.drawn,
      ...labels.map(({ middle, row, text }) =>
        lettering(middle, labelsY + (labelRows - row) * 17 - 2, text, { size: TYPE.small, anchor: 'middle' }),
      ),
    ].join(''),
  );
}

/** Rows that can be drawn, from cold to warm. */
const rowsOf = ({ rows }: DrawnCrop): DrawnRow[] =>
  rows
    .filter(
      ({ temperatureC, days }) =>
        Number.isFinite(temperatureC) && (days === null || (Number.isFinite(days) && days >= MIN_DAYS)),
    )
    .map((row) => ({
      ...row,
      percent: row.percent === null || !Number.isFinite(row.percent) ? null : Math.max(0, Math.min(100, row.percent)),
    }))
    .sort((a, b) => a.temperatureC - b.temperatureC);

function temperatureScale({ soil }: DrawnCrop, rows: readonly DrawnRow[], { unit, axisX, right }: Sheet): LinearScale {
  const tempsC = [...rows.map(({ temperatureC }) => temperatureC), ...(soil ? [soil.minimumC, soil.maximumC] : [])];
  const low = tempsC.length === 0 ? 0 : Math.min(...tempsC);
  const high = tempsC.length === 0 ? 40 : Math.max(...tempsC);
  const spare = Math.max(1.5, (high - low) * 0.04);
  return scaleLinear()
    .domain([inUnit(low - spare, unit), inUnit(high + spare, unit)])
    .range([axisX, right]);
}

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

const roundedDays = (days: number): number => (days < 10 ? Math.round(days * 10) / 10 : Math.round(days));

function temperatureAxis(x: LinearScale, { unit, isWide, right }: Sheet, y: number) {
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
function cellLane(
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

type Wording = Pick<Sheet, 'say' | 'unit'>;

/** Temperatures labelled above the curve. */
function limitsOf({ soil, hotThresholdC }: DrawnCrop, { say, unit }: Wording) {
  const all = [
    ...(soil
      ? [
          { tempC: soil.minimumC, limit: 'minimum' as const },
          { tempC: soil.maximumC, limit: 'maximum' as const },
        ]
      : []),
    { tempC: hotThresholdC, limit: 'heat' as const },
  ];
  return all
    .filter(({ tempC }) => Number.isFinite(tempC))
    .sort((a, b) => a.tempC - b.tempC)
    .map(({ tempC, limit }) => ({
      tempC,
      text: say({ code: 'picture.limit', params: { limit, at: degrees(tempC, unit) } }),
    }));
}

/** A custom response curve has the name that the grower gives it. */
const titleOf = ({ id, name, latinName }: DrawnCrop, say: SayPicture): string =>
  say({ code: 'picture.crop', params: { crop: id === OWN_ID ? name : id, latinName: latinName || null } });

const OWN_ID = 'own-rows';

function gist({ soil }: DrawnCrop, rows: readonly DrawnRow[], { say, unit }: Wording): string {
  const fastest = rows
    .filter((row) => row.days !== null)
    .reduce<DrawnRow | null>((best, row) => (best && best.days! <= row.days! ? best : row), null);
  return say({
    code: 'picture.curve',
    params: {
      ...(soil ? degreesSpan(soil.optimumFromC, soil.optimumToC, unit) : { from: null, to: null }),
      fastest: fastest && degrees(fastest.temperatureC, unit),
      days: fastest && roundedDays(fastest.days!),
    },
  });
}

/** The picture's description for readers who cannot see it. */
function inWords(crop: DrawnCrop, rows: readonly DrawnRow[], wording: Wording): string {
  const { say, unit } = wording;
  const valuesAt = (values: readonly { readonly tempC: number; readonly value: number }[]): string =>
    values
      .map(({ tempC, value }) => say({ code: 'picture.value-at', params: { value, at: degrees(tempC, unit) } }))
      .join(', ');
  const timed = rows
    .filter((row) => cellOf(row) === 'timed')
    .map(({ temperatureC, days }) => ({ tempC: temperatureC, value: roundedDays(days!) }));
  const counted = rows
    .filter(({ percent }) => percent !== null)
    .map(({ temperatureC, percent }) => ({ tempC: temperatureC, value: Math.round(percent!) }));
  const untimed = CELLS.filter((cell) => cell !== 'timed').map((cell) => {
    const at = rows.filter((row) => cellOf(row) === cell).map(({ temperatureC }) => degrees(temperatureC, unit));
    return at.length > 0 ? say({ code: 'picture.cell', params: { cell, at: at.join(', ') } }) : '';
  });
  return [
    gist(crop, rows, wording),
    timed.length > 0 ? say({ code: 'picture.days-at', params: { values: valuesAt(timed) } }) : '',
    counted.length > 0 ? say({ code: 'picture.seedlings-at', params: { values: valuesAt(counted) } }) : '',
    ...untimed,
    ...limitsOf(crop, wording).map(({ text }) => `${text}.`),
  ]
    .filter(Boolean)
    .join(' ');
}
