import { type LinearScale, scaleLinear } from 'd3-scale';
import { area, line } from 'd3-shape';
import { dateAxis, dayOf } from './dates.js';
import type { DrawnDay, DrawnForecast, Milestone } from './drawn-forecast.js';
import { EVENTS, milestoneInWords } from './forecast-words.js';
import type { Frame } from './frame.js';
import { paragraph, TYPE } from './lettering.js';
import { rungs } from './rungs.js';
import { element } from './svg.js';
import { paint } from './theme.js';

/** The share that is up, day by day, its axis of dates, and a lane for each of first, half and most. */
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
    `Seedlings up, of a hundred seeds, as in a laboratory; beds give ${Math.round(field.from)} to ${Math.round(field.to)}`,
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
  const band = area()
    .x(([at]) => at)
    .y0(([, low]) => low)
    .y1(([, , high]) => high)
    .digits(1);
  const curve =
    corners.length === 0
      ? ''
      : element('path', {
          d: band(corners.map(([at, height]) => [at, bottomY, height] as const)) ?? undefined,
          ...paint({ fill: 'accentGround' }),
        }) +
        element('path', {
          d: line().digits(1)(corners) ?? undefined,
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
  let laneY = axis.toY + 8;
  const lanes = EVENTS.map((event) => {
    const milestone = forecast.emergence[event];
    const said = paragraph(
      { x: sheet.left, y: laneY, width: sheet.right - sheet.left },
      milestoneInWords(event, milestone, forecast.stand.by, words),
    );
    laneY = said.toY + 2;
    if ('why' in milestone) return said.drawn;
    const barY = said.toY + 8;
    laneY = barY + 12;
    const at = Math.max(fromX, Math.min(toX, x(dayOf(milestone.date) + 0.5)));
    const drop =
      element('path', {
        d: `M${at.toFixed(1)},${upAt(at).toFixed(1)} V${barY.toFixed(1)}`,
        ...paint({ stroke: 'accent' }),
        'stroke-width': 1,
      }) +
      element('circle', {
        cx: at,
        cy: upAt(at),
        r: 4,
        ...paint({ fill: 'accent', stroke: 'paper' }),
        'stroke-width': 1.5,
      });
    return drop + rangeBar(milestone, at, x, barY) + said.drawn;
  });
  return {
    drawn: caption.drawn + rungs(y, 4, { left: fromX, right: toX }, '') + curve + axis.drawn,
    lanes: lanes.join(''),
    axisY: bottomY,
    toY: laneY,
  };
}

/** Thick as far as the weather leaves it open, thin on to slow beds; an arrow where it goes on past the picture. */
function rangeBar({ range, inBeds }: Milestone, at: number, x: LinearScale, y: number): string {
  const [fromX, toX] = x.range() as [number, number];
  const within = (day: number): number => Math.max(fromX, Math.min(toX, x(day)));
  const slowTo = dayOf(inBeds.to) + 1;
  const openTo = range.to === null ? Infinity : dayOf(range.to) + 1;
  const bar = (from: number, to: number, widthPx: number): string =>
    element('path', {
      d: `M${from.toFixed(1)},${y.toFixed(1)} H${to.toFixed(1)}`,
      ...paint({ stroke: 'accent' }),
      'stroke-width': widthPx,
    });
  return [
    within(slowTo) > at ? bar(at, within(slowTo), 1.5) : '',
    bar(within(dayOf(range.from)), within(openTo), 6),
    x(Math.max(openTo, slowTo)) > toX
      ? element('path', {
          d: `M${(toX - 5).toFixed(1)},${(y - 5).toFixed(1)} l5,5 l-5,5`,
          ...paint({ stroke: 'accent' }),
          'stroke-width': 1.5,
        })
      : '',
    element('circle', { cx: at, cy: y, r: 5, ...paint({ fill: 'accent', stroke: 'paper' }), 'stroke-width': 1.5 }),
  ].join('');
}
