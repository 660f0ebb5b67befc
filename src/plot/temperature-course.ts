import { dayOf } from './dates.js';
import { degreeScale, inUnit } from './degrees.js';
import {
  type DrawnDay,
  type DrawnForecast,
  type DrawnHours,
  type ForecastSetting,
  type KindOfSpell,
  spellsOf,
} from './drawn-forecast.js';
import type { Frame } from './frame.js';
import { inRows, lettering, TYPE } from './lettering.js';
import type { Sheet } from './picture.js';
import { rungs } from './rungs.js';
import { areaBetween, type LinearScale, lineThrough } from './shapes.js';
import { element, tenth } from './svg.js';
import { DASHES, type PlotPart, partOf, stretches } from './temperature-parts.js';
import { hatched, paint } from './theme.js';
import { thinned } from './thinned.js';

/** Hours are drawn if a day is at least this wide [px]; narrower days as minimum, mean and maximum. */
const HOURLY_DAY_PX = 6;

/** The temperature at the seed over the crop's favourable range, with spells of heat and cold. */
export function temperature(
  forecast: DrawnForecast,
  { goodC, hours }: ForecastSetting,
  days: readonly DrawnDay[],
  { sheet, x }: Frame,
  topY: number,
  bottomY: number,
): string {
  const [fromX, toX] = x.range() as [number, number];
  const isHourly = hours && x(1) - x(0) >= HOURLY_DAY_PX;
  const tempsC = [
    ...(isHourly ? Array.from(hours.tempC) : []),
    ...days.flatMap(({ min, mean, max }) => [min, mean, max]),
    ...(goodC ? [goodC.from, goodC.to] : []),
    ...spellsOf(forecast).flatMap(({ peakC, thresholdC }) => [peakC, thresholdC]),
  ];
  const y = degreeScale(tempsC, sheet.unit, bottomY, topY);
  const yOf = (tempC: number): number => y(inUnit(tempC, sheet.unit));
  const good = goodC
    ? element('rect', {
        x: fromX,
        y: yOf(goodC.to),
        width: toX - fromX,
        height: yOf(goodC.from) - yOf(goodC.to),
        ...paint({ fill: 'good' }),
      })
    : '';
  const spells = spellsOf(forecast).map((spell) =>
    beyondThreshold(spell, x, yOf(spell.thresholdC), { topY, bottomY }, sheet),
  );
  const grid = rungs(y, 5, { left: fromX, right: toX }, `°${sheet.unit}`);
  const course = isHourly ? hourlyCourse(hours, x, yOf) : dailyCourse(sheet, days, x, yOf);
  return good + grid + spells.join('') + course;
}

/** Areas beyond a spell's threshold, on its days. */
function beyondThreshold(
  { kind, from, to }: KindOfSpell,
  x: LinearScale,
  thresholdY: number,
  { topY, bottomY }: { readonly topY: number; readonly bottomY: number },
  { id }: Sheet,
): string {
  const [fromX, toX] = x.range() as [number, number];
  const left = Math.max(fromX, x(dayOf(from)));
  const right = Math.min(toX, x(dayOf(to) + 1));
  const limitY = Math.max(topY, Math.min(bottomY, thresholdY));
  if (!(right > left)) return '';
  const [y, height] = kind === 'hot' ? [topY, limitY - topY] : [limitY, bottomY - limitY];
  return (
    element('rect', { x: left, y, width: right - left, height, ...hatched(id, kind) }) +
    element('path', { d: `M${tenth(left)},${tenth(limitY)} H${tenth(right)}`, ...paint({ stroke: 'quiet' }) })
  );
}

/** The hourly temperature, with a line style for each part. */
function hourlyCourse({ atDay, tempC, basis }: DrawnHours, x: LinearScale, yOf: (tempC: number) => number): string {
  const [fromDay, toDay] = x.domain() as [number, number];
  const points: { day: number; tempC: number; part: PlotPart }[] = [];
  for (let i = 0; i < basis.length; i++) {
    const day = fromDay + (atDay[i] ?? NaN);
    if (Number.isFinite(tempC[i]) && day >= fromDay && day <= toDay)
      points.push({ day, tempC: tempC[i]!, part: partOf(basis[i]!) });
  }
  return stretches(points, (before, after) => after.day - before.day < 0.2)
    .map(({ part, points: some }) =>
      courseLine(part, thinned(some.map(({ day, tempC: one }) => [x(day), yOf(one)] as const))),
    )
    .join('');
}

function courseLine(part: PlotPart, corners: readonly (readonly [number, number])[]): string {
  const single = corners.length === 1 ? [corners[0]!, [corners[0]![0] + 0.1, corners[0]![1]] as const] : corners;
  return element('path', {
    d: lineThrough(single) ?? undefined,
    ...paint({ stroke: 'ink' }),
    'stroke-width': part === 'expected' ? 2 : 1.75,
    'stroke-linejoin': 'round',
    'stroke-linecap': part === 'measured' ? 'round' : undefined,
    'stroke-dasharray': DASHES[part],
  });
}

/** The daily temperature: minimum to maximum as a band, the mean as a line. */
function dailyCourse(sheet: Sheet, days: readonly DrawnDay[], x: LinearScale, yOf: (tempC: number) => number): string {
  const follows = (before: DrawnDay, after: DrawnDay): boolean => after.day - before.day === 1;
  const runs = stretches(days, follows);
  const bands = runs.map(({ part, points }) => {
    const corners = widened(points.map(({ day, min, max }) => [x(day + 0.5), yOf(min), yOf(max)] as const));
    const fill = part === 'measured' ? paint({ fill: 'rule', stroke: 'quiet' }) : hatched(sheet.id, part);
    return element('path', { d: areaBetween(corners) ?? undefined, ...fill, 'stroke-width': 0.75 });
  });
  const means = runs.map(({ part, points }) =>
    courseLine(
      part,
      points.map(({ day, mean }) => [x(day + 0.5), yOf(mean)] as const),
    ),
  );
  return bands.join('') + means.join('');
}

/** Gives a single day a width. */
const widened = (corners: readonly (readonly [number, number, number])[]) => {
  const [only] = corners;
  return corners.length === 1 && only
    ? [[only[0] - 2, only[1], only[2]] as const, [only[0] + 2, only[1], only[2]] as const]
    : corners;
};

/** A strip below the temperature that shows measured, modelled and expected days in the styles of the lines. */
export function partsStrip(days: readonly DrawnDay[], { x, sheet: { say } }: Frame, y: number) {
  const [fromX, toX] = x.range() as [number, number];
  const runs: { part: PlotPart; from: number; to: number }[] = [];
  for (const { day, part } of days) {
    const last = runs.at(-1);
    if (last && last.part === part && last.to === day) last.to = day + 1;
    else runs.push({ part, from: day, to: day + 1 });
  }
  const lineY = y + 12;
  const lines = runs.map(({ part, from, to }) =>
    element('path', {
      d: `M${(x(from) + 1).toFixed(1)},${lineY} H${Math.max(x(from) + 2, x(to) - 1).toFixed(1)}`,
      ...paint({ stroke: 'ink' }),
      'stroke-width': part === 'measured' ? 3 : 2.5,
      'stroke-dasharray': DASHES[part],
    }),
  );
  // Each part is labelled once, below its longest run.
  const longest = new Map<PlotPart, { from: number; to: number }>();
  for (const run of runs) {
    const known = longest.get(run.part);
    if (!known || run.to - run.from > known.to - known.from) longest.set(run.part, run);
  }
  const names = inRows(
    [...longest].map(([part, { from, to }]) => ({
      x: x((from + to) / 2),
      text: say({ code: 'picture.part', params: { part, dates: null } }),
    })),
    { from: fromX, to: toX },
  );
  const rowPx = 16;
  const rows = names.reduce((most, { row }) => Math.max(most, row + 1), 0);
  return {
    drawn:
      lines.join('') +
      names
        .map(({ middle, row, text }) =>
          lettering(middle, lineY + 16 + row * rowPx, text, { size: TYPE.small, anchor: 'middle', colour: 'quiet' }),
        )
        .join(''),
    toY: lineY + 6 + rows * rowPx,
  };
}
