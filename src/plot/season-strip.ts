import { scaleLinear } from 'd3-scale';
import { type DateWords, dateAxis, dateScale, dateWords, dayOf } from './dates.js';
import { inRows, lettering, paragraph, TYPE } from './lettering.js';
import { type PictureOptions, picture, type Sheet, sheetOf } from './picture.js';
import { rungs } from './rungs.js';
import { type DrawnSeason, type SeasonSetting, WHY_HATCH, WHYS } from './season.js';
import { captionOf, closedInWords, gist, inWords, openInWords, titleOf } from './season-words.js';
import type { LinearScale } from './shapes.js';
import { type Attributes, element, tenth } from './svg.js';
import { hatched, paint } from './theme.js';

const LABEL_ROW_PX = 17;

/** Where the strip stands on its sheet. */
interface Strip {
  readonly sheet: Sheet;
  readonly words: DateWords;
  /** The scale of days. */
  readonly x: LinearScale;
  /** The scale of odds in percent. */
  readonly y: LinearScale;
  readonly topY: number;
  readonly bottomY: number;
}

interface DrawnDate {
  readonly day: number;
  readonly odds: number;
  readonly isOpen: boolean;
}

/** A day that is named: the best, or today. */
interface NamedDay {
  readonly text: string;
  readonly x: number;
  readonly isBest: boolean;
}

/** The season as one strip of days: each date's probability, windows, closed spells with reasons, the best date. */
export function seasonStrip(season: DrawnSeason, setting: SeasonSetting, options: PictureOptions): string {
  const sheet = sheetOf(options);
  const { say } = sheet;
  const words = dateWords(sheet.locale);
  const dates = datesOf(season);
  const firstDay = dates[0]?.day ?? 0;
  const x = dateScale(firstDay, Math.max(firstDay, dates.at(-1)?.day ?? 0) + 1, sheet.axisX, sheet.right);
  const box = { x: sheet.left, width: sheet.right - sheet.left };

  const title = paragraph({ ...box, y: 14 }, titleOf(setting, say), { size: TYPE.title, bold: true });
  const said = paragraph({ ...box, y: title.toY }, gist(season, words, say), { colour: 'quiet' });
  const caption = paragraph({ ...box, y: said.toY + 8 }, captionOf(season, say), { size: TYPE.small });
  const named = namedDays(season, setting, sheet, words, x);
  const labels = dayLabels(named, sheet, caption.toY + 2);
  const topY = labels.toY + 8;
  const bottomY = topY + (sheet.isWide ? 110 : 90);
  const y = scaleLinear().domain([0, 100]).range([bottomY, topY]);
  const strip: Strip = { sheet, words, x, y, topY, bottomY };

  const [left, right] = x.range() as [number, number];
  const isSure = season.dates.some(({ sureness }) => sureness !== null);
  const laneY = bottomY + 6;
  const axis = dateAxis(x, words, laneY + 18);
  const legend = legendOf(season, strip, axis.toY + 6);
  return picture(
    sheet,
    legend.toY + 10,
    {
      title: titleOf(setting, say),
      description: inWords(season, setting, words, say),
      hatches: WHYS.map((why) => WHY_HATCH[why]),
    },
    [
      title.drawn,
      said.drawn,
      caption.drawn,
      isSure ? rungs(y, 3, { left, right }, ' %') : '',
      ...runsOf(dates).map((run) => barOf(run, strip)),
      isSure ? goalLine(season, strip) : '',
      ...named.map((day) => markOf(day, strip)),
      ...laneOf(season, strip, laneY),
      axis.drawn,
      labels.drawn,
      legend.drawn,
    ].join(''),
  );
}

/** The best day and today, as far as they lie in the season. */
function namedDays(
  { best }: DrawnSeason,
  { today }: SeasonSetting,
  { say }: Sheet,
  words: DateWords,
  x: LinearScale,
): NamedDay[] {
  const [from, to] = x.domain() as [number, number];
  return [
    ...(best ? [{ date: best.date, day: 'best' as const, isBest: true }] : []),
    ...(today ? [{ date: today, day: 'today' as const, isBest: false }] : []),
  ]
    .map(({ date, day, isBest }) => ({
      text: say({ code: 'picture.day', params: { day, on: words.short(date) } }),
      day: dayOf(date),
      isBest,
    }))
    .filter(({ day }) => day >= from && day < to)
    .map((one) => ({ ...one, x: x(one.day + 0.5) }));
}

/** The names of days, above the strip, in as many rows as keep them apart. */
function dayLabels(named: readonly NamedDay[], { left, right }: Sheet, fromY: number): { drawn: string; toY: number } {
  const labels = inRows(named, { from: left, to: right });
  const rows = labels.reduce((most, { row }) => Math.max(most, row + 1), 0);
  const drawn = labels.map(({ middle, row, text }, i) =>
    lettering(middle, fromY + (rows - row) * LABEL_ROW_PX, text, {
      size: TYPE.small,
      anchor: 'middle',
      bold: named[i]!.isBest,
    }),
  );
  return { drawn: drawn.join(''), toY: fromY + rows * LABEL_ROW_PX };
}

/** The odds of dates on end. */
function barOf(run: readonly DrawnDate[], { x, y, bottomY }: Strip): string {
  const { day: firstDay, isOpen } = run[0]!;
  const top = run.map(({ day, odds }) => `V${tenth(y(100 * odds))} H${tenth(x(day + 1))}`).join(' ');
  return element('path', {
    d: `M${tenth(x(firstDay))},${tenth(bottomY)} ${top} V${tenth(bottomY)} Z`,
    ...(isOpen ? paint({ fill: 'accentGround', stroke: 'accent' }) : paint({ fill: 'rule', stroke: 'quiet' })),
    'stroke-width': isOpen ? 2 : 1,
  });
}

/** The odds from which on a date is good. */
function goalLine({ criteria }: DrawnSeason, { x, y }: Strip): string {
  const [fromX, toX] = x.range() as [number, number];
  const goalY = tenth(y(100 * criteria.sureness));
  return element('path', {
    d: `M${tenth(fromX)},${goalY} H${tenth(toX)}`,
    ...paint({ stroke: 'ink' }),
    'stroke-dasharray': '4 3',
  });
}

const markOf = ({ x, isBest }: NamedDay, { topY, bottomY }: Strip): string =>
  element('path', {
    d: `M${tenth(x)},${tenth(topY - 6)} V${tenth(bottomY)}`,
    ...paint({ stroke: 'ink' }),
    'stroke-width': isBest ? 2 : 1,
    'stroke-dasharray': isBest ? undefined : '2 3',
  });

/** Windows, and spells closed to sowing, as blocks below the strip. */
function laneOf(season: DrawnSeason, { sheet, x }: Strip, y: number): string[] {
  const [fromX, toX] = x.range() as [number, number];
  const block = ({ from, to }: { readonly from: string; readonly to: string }, fill: Attributes): string => {
    const [left, right] = [Math.max(fromX, x(dayOf(from))), Math.min(toX, x(dayOf(to) + 1))];
    return right > left ? element('rect', { x: left, y, width: right - left, height: 14, ...fill }) : '';
  };
  return [
    ...season.windows.map((window) => block(window, paint({ fill: 'accent' }))),
    ...season.closed.map((spell) => block(spell, hatched(sheet.id, WHY_HATCH[spell.why]))),
  ];
}

/** What the blocks of the lane mean, one line each. */
function legendOf(season: DrawnSeason, { sheet, words }: Strip, fromY: number): { drawn: string; toY: number } {
  const { say, left, right } = sheet;
  let toY = fromY;
  const entry = (text: string, fill: Attributes): string => {
    const swatch = element('rect', { x: left, y: toY + 3, width: 26, height: 14, ...fill });
    const line = paragraph({ x: left + 36, y: toY, width: right - left - 36 }, text);
    toY = line.toY + 3;
    return swatch + line.drawn;
  };
  const { windows, closed } = season;
  const open = windows.length > 0 ? entry(openInWords(windows, words, say), paint({ fill: 'accent' })) : '';
  const spells = WHYS.filter((why) => closed.some((one) => one.why === why)).map((why) =>
    entry(closedInWords(season, why, words, say), hatched(sheet.id, WHY_HATCH[why])),
  );
  return { drawn: open + spells.join(''), toY };
}

/** Each date with its probability; from a usual year 1 for open dates and 0 for others. */
function datesOf({ dates, windows }: DrawnSeason): DrawnDate[] {
  const spans = windows.map(({ from, to }) => ({ from: dayOf(from), to: dayOf(to) }));
  return dates
    .map(({ date, sureness }) => {
      const day = dayOf(date);
      const isOpen = spans.some(({ from, to }) => from <= day && day <= to);
      const odds = sureness ?? (isOpen ? 1 : 0);
      return { day, isOpen, odds: Number.isFinite(odds) ? Math.max(0, Math.min(1, odds)) : 0 };
    })
    .filter(({ day }) => Number.isFinite(day));
}

/** Runs of consecutive dates, each all open or all closed. */
function runsOf(dates: readonly DrawnDate[]): DrawnDate[][] {
  const runs: DrawnDate[][] = [];
  for (const one of dates) {
    const last = runs.at(-1)?.at(-1);
    if (last && last.isOpen === one.isOpen && last.day === one.day - 1) runs.at(-1)!.push(one);
    else runs.push([one]);
  }
  return runs;
}
