import { scaleLinear } from 'd3-scale';
import { dateAxis, dayOf } from './dates.js';
import type { DrawnDay, DrawnEvent, DrawnForecast } from './drawn-forecast.js';
import { EVENTS, milestoneInWords } from './forecast-words.js';
import type { Frame } from './frame.js';
import { lettering, paragraph, TYPE, widthOf } from './lettering.js';
import { rungs } from './rungs.js';
import { areaBetween, type LinearScale, lineThrough } from './shapes.js';
import { element, tenth } from './svg.js';
import { paint } from './theme.js';

/** The emerged share by day, its axis of dates, and a lane for each of first, half and most. */
export function emergencePanel(
  forecast: DrawnForecast,
  days: readonly DrawnDay[],
  { sheet, words, x }: Frame,
  fromY: number,
) {
  const [fromX, toX] = x.range() as [number, number];
  const { field } = forecast.stand;
  const caption = paragraph(
    { x: sheet.left, y: fromY, width: sheet.right - sheet.left },
    sheet.say({
      code: 'picture.seedlings-up',
      params: { fromSeedlings: Math.round(field.from), toSeedlings: Math.round(field.to) },
    }),
    { size: TYPE.small },
  );
  const topY = caption.toY + 8;
  const bottomY = topY + (sheet.isWide ? 120 : 96);
  const y = scaleLinear().domain([0, 100]).range([bottomY, topY]);
  const start = days[0];
  const corners = start
    ? [
        [x(start.day), y(0)] as const,
        ...days.map(({ day, upPercent }) => [x(day + 1), y(Math.min(100, Math.max(0, upPercent)))] as const),
      ]
    : [];
  const curve =
    corners.length === 0
      ? ''
      : element('path', {
          d: areaBetween(corners.map(([at, height]) => [at, bottomY, height] as const)) ?? undefined,
          ...paint({ fill: 'accentGround' }),
        }) +
        element('path', {
          d: lineThrough(corners) ?? undefined,
          ...paint({ stroke: 'accent' }),
          'stroke-width': 2.5,
          'stroke-linejoin': 'round',
        });
  const axis = dateAxis(x, words, bottomY);
  const upAt = (at: number): number => {
    const i = corners.findIndex(([cornerX]) => cornerX >= at);
    if (i < 0) return corners.at(-1)?.[1] ?? bottomY;
    if (i === 0) return corners[0]![1];
    const [[x0, y0], [x1, y1]] = [corners[i - 1]!, corners[i]!];
    return y0 + ((y1 - y0) * (at - x0)) / Math.max(1e-9, x1 - x0);
  };
  const dots = EVENTS.map((event) => {
    const milestone = forecast.emergence[event];
    if ('why' in milestone) return '';
    const at = x.copy().clamp(true)(dayOf(milestone.date) + 0.5);
    return (
      element('path', {
        d: `M${tenth(at)},${tenth(upAt(at))} V${tenth(bottomY)}`,
        ...paint({ stroke: 'accent' }),
        'stroke-width': 1,
      }) + dot(at, upAt(at))
    );
  });
  const lanes = lanesOf(forecast, { sheet, words, x }, axis.toY + 8);
  return {
    surface: rungs(y, 4, { left: fromX, right: toX }, '') + curve + axis.drawn,
    letters: caption.drawn + dots.join('') + lanes.drawn,
    axisY: bottomY,
    toY: lanes.toY,
  };
}

const dot = (x: number, y: number): string =>
  element('circle', { cx: x, cy: y, r: 5, ...paint({ fill: 'accent', stroke: 'paper' }), 'stroke-width': 1.5 });

/** A lane for each of first, half and most: its bar, with its text beside it, or above if there is no room. */
function lanesOf(forecast: DrawnForecast, { sheet, words, x }: Frame, fromY: number) {
  const [, toX] = x.range() as [number, number];
  const lanes = EVENTS.map((event) => {
    const milestone = forecast.emergence[event];
    const text = milestoneInWords(event, milestone, forecast.stand.by, { ...sheet, words });
    return { text, widthPx: widthOf(text) + 14, bar: 'why' in milestone ? null : rangeBar(milestone, x) };
  });
  const isBeside = lanes.every(
    ({ bar, widthPx }) => !bar || toX - bar.toX >= widthPx || bar.fromX - sheet.left >= widthPx,
  );
  let y = fromY;
  const drawn = lanes.map(({ text, widthPx, bar }) => {
    if (isBeside) {
      y += 24;
      if (!bar) return lettering(sheet.axisX, y - 4, text);
      const isRight = toX - bar.toX >= widthPx;
      return (
        bar.drawn(y - 9) +
        lettering(isRight ? bar.toX + 12 : bar.fromX - 12, y - 4, text, { anchor: isRight ? 'start' : 'end' })
      );
    }
    const said = paragraph({ x: sheet.left, y, width: sheet.right - sheet.left }, text);
    y = said.toY + (bar ? 22 : 4);
    return said.drawn + (bar?.drawn(said.toY + 8) ?? '');
  });
  return { drawn: drawn.join(''), toY: y + 2 };
}

/** Thick for the range of the weather, thin on to slow beds; an arrow if it continues beyond the picture. */
function rangeBar({ date, range, inBeds }: DrawnEvent, x: LinearScale) {
  const [, edgeX] = x.range() as [number, number];
  const within = x.copy().clamp(true);
  const at = within(dayOf(date) + 0.5);
  const slowTo = dayOf(inBeds.to) + 1;
  const openTo = range.to === null ? Infinity : dayOf(range.to) + 1;
  const goesOn = Math.max(openTo, slowTo) > x.domain()[1]!;
  const [fromX, openX, slowX] = [
    within(dayOf(range.from)),
    openTo === Infinity ? edgeX : within(openTo),
    within(slowTo),
  ];
  const stroke = (d: string, widthPx: number): string =>
    element('path', { d, ...paint({ stroke: 'accent' }), 'stroke-width': widthPx });
  return {
    fromX: Math.min(fromX, at - 5),
    toX: Math.max(openX, slowX, at + 5),
    drawn: (y: number): string =>
      [
        slowX > at ? stroke(`M${tenth(at)},${tenth(y)} H${tenth(slowX)}`, 1.5) : '',
        stroke(`M${tenth(fromX)},${tenth(y)} H${tenth(openX)}`, 6),
        goesOn ? stroke(`M${tenth(edgeX - 6)},${tenth(y - 6)} l6,6 l-6,6`, 1.5) : '',
        dot(at, y),
      ].join(''),
  };
}
