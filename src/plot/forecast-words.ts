import { type DateWords, dateOfDay } from './dates.js';
import { degrees, degreesSpan } from './degrees.js';
import {
  type DrawnEvent,
  type DrawnForecast,
  type DrawnMilestone,
  daysOf,
  type ForecastSetting,
  type KindOfSpell,
  spellsOf,
} from './drawn-forecast.js';
import type { Sheet } from './picture.js';
import { stretches } from './temperature-parts.js';

export const EVENTS = ['first', 'half', 'most'] as const;
type Event = (typeof EVENTS)[number];

/** Everything that a picture's words need: the sayer, the unit and the format of dates. */
export interface PlotWords extends Pick<Sheet, 'say' | 'unit'> {
  readonly words: DateWords;
}

export const titleOf = (
  { sowing }: DrawnForecast,
  { crop, bedName }: ForecastSetting,
  { say, words }: PlotWords,
): string => say({ code: 'picture.sown', params: { crop, on: words.long(sowing.date), bed: bedName || null } });

/** The forecast's gist, in a sentence or two. */
export function gist(
  { emergence: { half }, stand, sowing }: DrawnForecast,
  today: string | null,
  { say, words }: PlotWords,
): string {
  if ('why' in half) return say({ code: 'picture.none-up', params: { reason: half.why, by: words.short(stand.by) } });
  const { from, to } = stand.seedlings ?? stand.field;
  return say({
    code: 'picture.half-up',
    params: {
      tense: today !== null && half.date < today ? 'was' : 'is',
      on: words.short(half.date),
      ...rangeOf(half, words),
      fromSeedlings: Math.round(from),
      toSeedlings: Math.round(to),
      seeds: (stand.seedlings && sowing.seeds) || null,
    },
  });
}

/** The date when a share of the seedlings has emerged. */
export function milestoneInWords(
  event: Event,
  milestone: DrawnMilestone,
  by: string,
  { say, words }: Pick<PlotWords, 'say' | 'words'>,
): string {
  if ('why' in milestone) {
    return say({ code: 'picture.no-event', params: { event, reason: milestone.why, by: words.short(by) } });
  }
  const { date, inBeds } = milestone;
  const slowTo = inBeds.to > date ? words.short(inBeds.to) : null;
  return say({
    code: 'picture.event',
    params: { event, on: words.short(date), ...rangeOf(milestone, words), slowTo },
  });
}

/** The range of dates if it is more than a day. */
function rangeOf({ range: { from, to } }: DrawnEvent, words: DateWords) {
  if (to === null) return { range: 'open', from: words.short(from), to: null } as const;
  return from === to
    ? ({ range: 'day', from: null, to: null } as const)
    : ({ range: 'span', from: words.short(from), to: words.short(to) } as const);
}

/** A spell's label in the picture. */
export const spellInWords = ({ kind, from, to, peakC }: KindOfSpell, { say, unit, words }: PlotWords): string =>
  say({ code: 'picture.spell', params: { kind, dates: words.span(from, to), peak: degrees(peakC, unit) } });

/** The picture's description for readers who cannot see it. */
export function forecastInWords(forecast: DrawnForecast, { goodC, today }: ForecastSetting, told: PlotWords): string {
  const { say, unit, words } = told;
  const { emergence, stand } = forecast;
  const days = daysOf(forecast);
  const parts = stretches(days, () => true).map(({ part, points }, i) => {
    // A stretch begins with the last point of the one before.
    const dates = words.span(dateOfDay(points[i > 0 ? 1 : 0]!.day), dateOfDay(points.at(-1)!.day));
    return `${say({ code: 'picture.part', params: { part, dates } })}.`;
  });
  const coldestC = days.reduce((least, { min }) => Math.min(least, min), Infinity);
  const warmestC = days.reduce((most, { max }) => Math.max(most, max), -Infinity);
  return [
    gist(forecast, today ?? null, told),
    ...EVENTS.map((event) => `${milestoneInWords(event, emergence[event], stand.by, told)}.`),
    days.length > 0
      ? say({ code: 'picture.temperature', params: degreesSpan(coldestC, warmestC, unit) })
      : say({ code: 'picture.no-temperature', params: {} }),
    ...parts,
    goodC ? say({ code: 'picture.likes', params: degreesSpan(goodC.from, goodC.to, unit) }) : '',
    ...spellsOf(forecast).map((spell) => `${spellInWords(spell, told)}.`),
    today ? say({ code: 'picture.today', params: { on: words.short(today) } }) : '',
    say({ code: 'picture.count', params: { on: words.short(stand.by) } }),
  ]
    .filter(Boolean)
    .join(' ');
}
