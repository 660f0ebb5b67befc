import { scaleLinear } from 'd3-scale';
import { type DateWords, dateAxis, dateScale, dateWords, dayOf } from './dates.js';
import { inRows, lettering, paragraph, TYPE } from './lettering.js';
import { type PictureOptions, picture, sheetOf } from './picture.js';
import { rungs } from './rungs.js';
import { type Attributes, element, tenth } from './svg.js';
import { type Hatch, hatched, paint } from './theme.js';

export type WhyClosed = 'too-cold' | 'too-hot' | 'too-slow' | 'frost-to-come';

/** Of sowing windows what is drawn; an answer of /v1/sowing-windows has it all. */
export interface DrawnSeason {
  /** The share of years in which each date was good; null where a usual year stands for all. */
  readonly dates: readonly { readonly date: string; readonly sureness: number | null }[];
  readonly windows: readonly { readonly from: string; readonly to: string }[];
  readonly closed: readonly { readonly from: string; readonly to: string; readonly why: WhyClosed }[];
  readonly best: { readonly date: string; readonly why: string } | null;
  readonly criteria: { readonly sureness: number };
  readonly years: { readonly count: number };
}

export interface SeasonSetting {
  readonly cropName: string;
  /** The bed, or the place. */
  readonly bedName?: string | null;
  readonly today?: string | null;
}

export const WHY_WORDS: Readonly<Record<WhyClosed, string>> = {
  'too-cold': 'too cold',
  'too-hot': 'too hot',
  'too-slow': 'too slow',
  'frost-to-come': 'frost to come',
};
export const WHY_HATCH: Readonly<Record<WhyClosed, Hatch>> = {
  'too-cold': 'cold',
  'too-hot': 'hot',
  'too-slow': 'slow',
  'frost-to-come': 'frost',
};
export const WHYS = Object.keys(WHY_WORDS) as WhyClosed[];
/** So many spells of one kind are named one by one. */
const MOST_NAMED = 4;

interface DrawnDate {
  readonly day: number;
  readonly odds: number;
  readonly isOpen: boolean;
}

/** The season as one strip of days: how sure each date is, windows, spells closed to sowing and why, the best date. */
export function seasonStrip(season: DrawnSeason, setting: SeasonSetting, options: PictureOptions = {}): string {
  const sheet = sheetOf(options);
  const words = dateWords(sheet.locale);
  const dates = datesOf(season);
  const firstDay = dates[0]?.day ?? 0;
  const x = dateScale(firstDay, Math.max(firstDay, dates.at(-1)?.day ?? 0) + 1, sheet.axisX, sheet.right);
  const [fromX, toX] = x.range() as [number, number];
  const box = { x: sheet.left, width: sheet.right - sheet.left };

  const title = paragraph({ ...box, y: 14 }, titleOf(setting), { size: TYPE.title, bold: true });
  const said = paragraph({ ...box, y: title.toY }, gist(season, words), { colour: 'quiet' });
  const caption = paragraph({ ...box, y: said.toY + 8 }, captionOf(season), { size: TYPE.small });

  const named = [
    ...(season.best ? [{ date: season.best.date, text: `best ${words.short(season.best.date)}`, isBest: true }] : []),
    ...(setting.today ? [{ date: setting.today, text: `today ${words.short(setting.today)}`, isBest: false }] : []),
  ]
    .map((one) => ({ ...one, day: dayOf(one.date) }))
    .filter(({ day }) => day >= x.domain()[0]! && day < x.domain()[1]!)
    .map((one) => ({ ...one, x: x(one.day + 0.5) }));
  const labels = inRows(named, { from: sheet.left, to: sheet.right });
  const rows = labels.reduce((most, { row }) => Math.max(most, row + 1), 0);
  const labelsY = caption.toY + 2;
  const topY = labelsY + rows * 17 + 8;
  const bottomY = topY + (sheet.isWide ? 110 : 90);
  const y = scaleLinear().domain([0, 100]).range([bottomY, topY]);

  const bars = runsOf(dates).map((run) => {
    const [first, isOpen] = [run[0]!, run[0]!.isOpen];
    const top = run.map(({ day, odds }) => `V${tenth(y(100 * odds))} H${tenth(x(day + 1))}`).join(' ');
    const d = `M${tenth(x(first.day))},${tenth(bottomY)} ${top} V${tenth(bottomY)} Z`;
    return element('path', {
      d,
      ...(isOpen ? paint({ fill: 'accentGround', stroke: 'accent' }) : paint({ fill: 'rule', stroke: 'quiet' })),
      'stroke-width': isOpen ? 2 : 1,
    });
  });
  const isSure = season.dates.some(({ sureness }) => sureness !== null);
  const goalY = y(100 * season.criteria.sureness);
  const goal = isSure
    ? element('path', {
        d: `M${tenth(fromX)},${tenth(goalY)} H${tenth(toX)}`,
        ...paint({ stroke: 'ink' }),
        'stroke-dasharray': '4 3',
      })
    : '';
  const marks = named.map(({ x: at, isBest }) =>
    element('path', {
      d: `M${tenth(at)},${tenth(topY - 6)} V${tenth(bottomY)}`,
      ...paint({ stroke: 'ink' }),
      'stroke-width': isBest ? 2 : 1,
      'stroke-dasharray': isBest ? undefined : '2 3',
    }),
  );
  const laneY = bottomY + 6;
  const block = ({ from, to }: { readonly from: string; readonly to: string }, fill: Attributes): string => {
    const [left, right] = [Math.max(fromX, x(dayOf(from))), Math.min(toX, x(dayOf(to) + 1))];
    return right > left ? element('rect', { x: left, y: laneY, width: right - left, height: 14, ...fill }) : '';
  };
  const blocks = [
    ...season.windows.map((window) => block(window, paint({ fill: 'accent' }))),
    ...season.closed.map((spell) => block(spell, hatched(sheet.id, WHY_HATCH[spell.why]))),
  ];
  const axis = dateAxis(x, words, laneY + 18);
  let toY = axis.toY + 6;
  const entry = (text: string, fill: Attributes): string => {
    const swatch = element('rect', { x: sheet.left, y: toY + 3, width: 26, height: 14, ...fill });
    const line = paragraph({ x: sheet.left + 36, y: toY, width: box.width - 36 }, text);
    toY = line.toY + 3;
    return swatch + line.drawn;
  };
  const legend = [
    ...(season.windows.length > 0
      ? [entry(`open ${spansInWords(season.windows, words)}`, paint({ fill: 'accent' }))]
      : []),
    ...WHYS.filter((why) => season.closed.some((one) => one.why === why)).map((why) =>
      entry(closedInWords(season, why, words), hatched(sheet.id, WHY_HATCH[why])),
    ),
  ];

  return picture(
    sheet,
    toY + 10,
    {
      title: titleOf(setting),
      description: inWords(season, setting, words),
      hatches: WHYS.map((why) => WHY_HATCH[why]),
    },
    [
      title.drawn,
      said.drawn,
      caption.drawn,
      isSure ? rungs(y, 3, { left: fromX, right: toX }, ' %') : '',
      ...bars,
      goal,
      ...marks,
      ...blocks,
      axis.drawn,
      ...labels.map(({ middle, row, text }) =>
        lettering(middle, labelsY + (rows - row) * 17, text, {
          size: TYPE.small,
          anchor: 'middle',
          bold: text.startsWith('best'),
        }),
      ),
      ...legend,
    ].join(''),
  );
}

/** Each date with its odds; of a usual year open dates stand for sure, and others for none. */
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

/** Dates on end that are open, or are not. */
function runsOf(dates: readonly DrawnDate[]): DrawnDate[][] {
  const runs: DrawnDate[][] = [];
  for (const one of dates) {
    const last = runs.at(-1)?.at(-1);
    if (last && last.isOpen === one.isOpen && last.day === one.day - 1) runs.at(-1)!.push(one);
    else runs.push([one]);
  }
  return runs;
}

const titleOf = ({ cropName, bedName }: SeasonSetting): string =>
  `When to sow ${cropName.toLowerCase()}${bedName ? `, ${bedName}` : ''}`;

function gist({ best, windows }: DrawnSeason, words: DateWords): string {
  if (windows.length === 0) return 'No date of this season is sure enough.';
  return `Sow ${spansInWords(windows, words)}${best ? `; best on ${words.long(best.date)}` : ''}.`;
}

const captionOf = ({ years, criteria }: DrawnSeason): string =>
  years.count === 0
    ? 'Judged by one usual year: how often a date fails is not known'
    : `In how many of ${years.count} years each date was good; dashed: ${Math.round(100 * criteria.sureness)} %, as sure as was asked for`;

const closedInWords = ({ closed }: DrawnSeason, why: WhyClosed, words: DateWords): string =>
  `${WHY_WORDS[why]} ${spansInWords(
    closed.filter((one) => one.why === why),
    words,
  )}`;

export function spansInWords(
  spans: readonly { readonly from: string; readonly to: string }[],
  words: DateWords,
): string {
  const named = spans.slice(0, MOST_NAMED).map(({ from, to }) => words.span(from, to));
  const others = spans.length - named.length;
  return listed(others > 0 ? [...named, `${others} more`] : named);
}

const listed = (texts: readonly string[]): string =>
  texts.length < 2 ? texts.join('') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1)}`;

/** What the picture says, for who does not see it. */
function inWords(season: DrawnSeason, { today }: SeasonSetting, words: DateWords): string {
  const reasons = WHYS.filter((why) => season.closed.some((one) => one.why === why));
  return [
    gist(season, words),
    season.best?.why,
    `${captionOf(season)}.`,
    ...reasons.map((why) => `Closed, ${closedInWords(season, why, words)}.`),
    today ? `Today is ${words.short(today)}.` : '',
  ]
    .filter(Boolean)
    .join(' ');
}
