import { type DateWords, dateAxis, dateScale, dateWords, dayOf } from './dates.js';
import { lettering, paragraph, TYPE } from './lettering.js';
import { type PictureOptions, picture, sheetOf } from './picture.js';
import type { SayPicture } from './picture-facts.js';
import { type DrawnSeason, WHY_HATCH, WHYS } from './season.js';
import { spansInWords } from './season-words.js';
import { type Attributes, element, tenth } from './svg.js';
import { hatched, paint } from './theme.js';

/** One of several seasons to compare. */
export interface Lane extends Pick<DrawnSeason, 'windows' | 'closed'> {
  readonly name: string;
  readonly best: { readonly date: string } | null;
}

export interface LanesSetting {
  readonly title: string;
  /** The dates that all seasons cover. */
  readonly from: string;
  readonly to: string;
}

const LANE_PX = 18;

/** Seasons below one another, day under day: open times, reasons for closed times, and best dates. */
export function seasonLanes(lanes: readonly Lane[], setting: LanesSetting, options: PictureOptions): string {
  const sheet = sheetOf(options);
  const { say } = sheet;
  const words = dateWords(sheet.locale);
  const [firstDay, lastDay] = [dayOf(setting.from), dayOf(setting.to)];
  const x = dateScale(firstDay, Math.max(firstDay, lastDay) + 1, sheet.left, sheet.right);
  const within = (day: number): number => Math.max(sheet.left, Math.min(sheet.right, x(day)));
  let toY = 6;
  const drawn = lanes.map((lane) => {
    const name = paragraph({ x: sheet.left, y: toY, width: sheet.right - sheet.left }, lane.name);
    const y = name.toY + 1;
    toY = y + LANE_PX + 8;
    const block = ({ from, to }: { readonly from: string; readonly to: string }, fill: Attributes): string => {
      const [left, right] = [within(dayOf(from)), within(dayOf(to) + 1)];
      return right > left ? element('rect', { x: left, y, width: right - left, height: LANE_PX, ...fill }) : '';
    };
    return [
      element('rect', {
        x: sheet.left,
        y,
        width: sheet.right - sheet.left,
        height: LANE_PX,
        ...paint({ stroke: 'rule' }),
      }),
      ...lane.windows.map((window) => block(window, paint({ fill: 'accent' }))),
      ...lane.closed.map((spell) => block(spell, hatched(sheet.id, WHY_HATCH[spell.why]))),
      lane.best ? star(within(dayOf(lane.best.date) + 0.5), y + LANE_PX / 2) : '',
      name.drawn,
    ].join('');
  });
  const axis = dateAxis(x, words, toY);
  toY = axis.toY + 6;
  const whys = WHYS.filter((why) => lanes.some(({ closed }) => closed.some((one) => one.why === why)));
  const entry = (text: string, sign: (y: number) => string): string => {
    const line = lettering(sheet.left + 36, toY + TYPE.plain, text);
    const all = sign(toY + 3) + line;
    toY += 22;
    return all;
  };
  const swatch = (fill: Attributes) => (y: number) =>
    element('rect', { x: sheet.left, y, width: 26, height: 14, ...fill });
  const legend = [
    entry(say({ code: 'picture.open', params: { dates: null } }), swatch(paint({ fill: 'accent' }))),
    ...(lanes.some(({ best }) => best)
      ? [entry(say({ code: 'picture.best', params: {} }), (y) => star(sheet.left + 13, y + 7))]
      : []),
    ...whys.map((why) =>
      entry(
        say({ code: 'picture.closed', params: { reason: why, dates: null } }),
        swatch(hatched(sheet.id, WHY_HATCH[why])),
      ),
    ),
  ];
  return picture(
    sheet,
    toY + 8,
    {
      title: setting.title,
      description: lanes.map((lane) => laneInWords(lane, words, say)).join(' '),
      hatches: WHYS.map((why) => WHY_HATCH[why]),
    },
    [...drawn, axis.drawn, ...legend].join(''),
  );
}

/** A star that is visible on open and closed days alike. */
const star = (x: number, y: number): string =>
  element('path', {
    d: `M${tenth(x)},${tenth(y - 8)} L${tenth(x + 7)},${tenth(y)} L${tenth(x)},${tenth(y + 8)} L${tenth(x - 7)},${tenth(y)} Z`,
    ...paint({ fill: 'paper', stroke: 'ink' }),
    'stroke-width': 2,
  });

function laneInWords({ name, windows, best }: Lane, words: DateWords, say: SayPicture): string {
  const dates = windows.length === 0 ? null : spansInWords(windows, words, say);
  return say({ code: 'picture.lane', params: { name, dates, bestDate: best?.date ?? null } });
}
