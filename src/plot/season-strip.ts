import { scaleLinear } from 'd3-scale';
import { type DateWords, dateAxis, dateScale, dateWords, dayOf } from './dates.js';
import { inRows, lettering, paragraph, TYPE } from './lettering.js';
import { type PictureOptions, picture, sheetOf } from './picture.js';
import type { SayPicture } from './picture-facts.js';
import { rungs } from './rungs.js';
import { type Attributes, element, tenth } from './svg.js';
import { type Hatch, hatched, paint } from './theme.js';

export type WhyClosed = 'too-cold' | 'too-hot' | 'too-slow' | 'frost-to-come' | 'too-late';

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
  /** A crop's id, or what the grower calls a crop of their own. */
  readonly crop: string;
  /** The bed, or the place. */
  readonly bedName?: string | null;
  readonly today?: string | null;
}

export const WHY_HATCH: Readonly<Record<WhyClosed, Hatch>> = {
  'too-cold': 'cold',
  'too-hot': 'hot',
  'too-slow': 'slow',
  'frost-to-come': 'frost',
  'too-late': 'late',
};
export const WHYS = Object.keys(WHY_HATCH) as WhyClosed[];
/** So many spells of one kind are named one by one. */
const MOST_NAMED = 4;

interface DrawnDate {
  readonly day: number;
  readonly odds: number;
  readonly isOpen: boolean;
}

/** The season as one strip of days: how sure each date is, windows, spells closed to sowing and why, the best date. */
export function seasonStrip(season: DrawnSeason, setting: SeasonSetting, options: PictureOptions): string {
  const sheet = sheetOf(options);
  const { say } = sheet;
  const words = dateWords(sheet.locale);
  const dates = datesOf(season);
  const firstDay = dates[0]?.day ?? 0;
  const x = dateScale(firstDay, Math.max(firstDay, dates.at(-1)?.day ?? 0) + 1, sheet.axisX, sheet.right);
  const [fromX, toX] = x.range() as [number, number];
  const box = { x: sheet.left, width: sheet.right - sheet.left };

  const title = paragraph({ ...box, y: 14 }, titleOf(setting, say), { size: TYPE.title, bold: true });
  const said = paragraph({ ...box, y: title.toY }, gist(season, words, say), { colour: 'quiet' });
  const caption = paragraph({ ...box, y: said.toY + 8 }, captionOf(season, say), { size: TYPE.small });

  const named = [
    ...(season.best ? [{ date: season.best.date, day: 'best' as const, isBest: true }] : []),
    ...(setting.today ? [{ date: setting.today, day: 'today' as const, isBest: false }] : []),
  ]
    .map(({ date, day, isBest }) => ({
      text: say({ code: 'picture.day', params: { day, on: words.short(date) } }),
      day: dayOf(date),
      isBest,
    }))
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
    ...(season.windows.length > 0 ? [entry(openInWords(season.windows, words, say), paint({ fill: 'accent' }))] : []),
    ...WHYS.filter((why) => season.closed.some((one) => one.why === why)).map((why) =>
      entry(closedInWords(season, why, words, say), hatched(sheet.id, WHY_HATCH[why])),
    ),
  ];

  return picture(
    sheet,
    toY + 10,
    {
      title: titleOf(setting, say),
      description: inWords(season, setting, words, say),
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
      ...labels.map(({ middle, row, text }, i) =>
        lettering(middle, labelsY + (rows - row) * 17, text, {
          size: TYPE.small,
          anchor: 'middle',
          bold: named[i]!.isBest,
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

const titleOf = ({ crop, bedName }: SeasonSetting, say: SayPicture): string =>
  say({ code: 'picture.when-to-sow', params: { crop, bed: bedName || null } });

function gist({ best, windows }: DrawnSeason, words: DateWords, say: SayPicture): string {
  if (windows.length === 0) return say({ code: 'picture.no-season', params: {} });
  const dates = spansInWords(windows, words, say);
  return say({ code: 'picture.season', params: { dates, bestDate: best?.date ?? null } });
}

const captionOf = ({ years, criteria }: DrawnSeason, say: SayPicture): string =>
  say({
    code: 'picture.odds',
    params: { years: years.count, surenessPercent: Math.round(100 * criteria.sureness) },
  });

const openInWords = (spans: readonly Dates[], words: DateWords, say: SayPicture): string =>
  say({ code: 'picture.open', params: { dates: spansInWords(spans, words, say) } });

const closedOf = ({ closed }: DrawnSeason, reason: WhyClosed, words: DateWords, say: SayPicture) => ({
  reason,
  dates: spansInWords(
    closed.filter(({ why }) => why === reason),
    words,
    say,
  ),
});

const closedInWords = (season: DrawnSeason, reason: WhyClosed, words: DateWords, say: SayPicture): string =>
  say({ code: 'picture.closed', params: closedOf(season, reason, words, say) });

interface Dates {
  readonly from: string;
  readonly to: string;
}

export function spansInWords(spans: readonly Dates[], words: DateWords, say: SayPicture): string {
  const named = spans.slice(0, MOST_NAMED).map(({ from, to }) => words.span(from, to));
  const more = spans.length - named.length;
  return words.list(more > 0 ? [...named, say({ code: 'picture.more', params: { more } })] : named);
}

/** What the picture says, for who does not see it. */
function inWords(season: DrawnSeason, { today }: SeasonSetting, words: DateWords, say: SayPicture): string {
  const reasons = WHYS.filter((why) => season.closed.some((one) => one.why === why));
  return [
    gist(season, words, say),
    season.best?.why,
    `${captionOf(season, say)}.`,
    ...reasons.map((why) => say({ code: 'picture.closed-dates', params: closedOf(season, why, words, say) })),
    today ? say({ code: 'picture.today', params: { on: words.short(today) } }) : '',
  ]
    .filter(Boolean)
    .join(' ');
}
