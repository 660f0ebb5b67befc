import type { DateWords } from './dates.js';
import type { SayPicture } from './picture-facts.js';
import { type DrawnSeason, type SeasonSetting, WHYS, type WhyClosed } from './season.js';

/** Maximum spells of one kind that are named one by one. */
const MAX_NAMED = 4;

export const titleOf = ({ crop, bedName }: SeasonSetting, say: SayPicture): string =>
  say({ code: 'picture.when-to-sow', params: { crop, bed: bedName || null } });

export function gist({ best, windows }: DrawnSeason, words: DateWords, say: SayPicture): string {
  if (windows.length === 0) return say({ code: 'picture.no-season', params: {} });
  const dates = spansInWords(windows, words, say);
  return say({ code: 'picture.season', params: { dates, bestDate: best?.date ?? null } });
}

export const captionOf = ({ years, climate, criteria }: DrawnSeason, say: SayPicture): string =>
  say({
    code: 'picture.odds',
    params: {
      years: years.count || (climate?.typicalYears ?? 0),
      surenessPercent: Math.round(100 * criteria.sureness),
    },
  });

export const openInWords = (spans: readonly Dates[], words: DateWords, say: SayPicture): string =>
  say({ code: 'picture.open', params: { dates: spansInWords(spans, words, say) } });

const closedOf = ({ closed }: DrawnSeason, reason: WhyClosed, words: DateWords, say: SayPicture) => ({
  reason,
  dates: spansInWords(
    closed.filter(({ why }) => why === reason),
    words,
    say,
  ),
});

export const closedInWords = (season: DrawnSeason, reason: WhyClosed, words: DateWords, say: SayPicture): string =>
  say({ code: 'picture.closed', params: closedOf(season, reason, words, say) });

interface Dates {
  readonly from: string;
  readonly to: string;
}

export function spansInWords(spans: readonly Dates[], words: DateWords, say: SayPicture): string {
  const named = spans.slice(0, MAX_NAMED).map(({ from, to }) => words.span(from, to));
  const more = spans.length - named.length;
  return words.list(more > 0 ? [...named, say({ code: 'picture.more', params: { more } })] : named);
}

/** The picture's description for readers who cannot see it. */
export function inWords(season: DrawnSeason, { today }: SeasonSetting, words: DateWords, say: SayPicture): string {
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
