import { type DateWords, dateOfDay } from './dates.js';
import { degrees, degreesSpan, type Unit } from './degrees.js';
import {
  type DrawnForecast,
  type DrawnMilestone,
  daysOf,
  type ForecastSetting,
  type KindOfSpell,
  type Milestone,
  spellsOf,
} from './drawn-forecast.js';
import { PARTS_IN_WORDS, stretches } from './temperature-parts.js';

export const EVENTS = ['first', 'half', 'most'] as const;
type Event = (typeof EVENTS)[number];
const EVENT_WORDS: Readonly<Record<Event, string>> = { first: 'First tenth', half: 'Half', most: 'Nine tenths' };

export const titleOf = ({ sowing }: DrawnForecast, { cropName, bedName }: ForecastSetting, words: DateWords): string =>
  `${cropName}, sown on ${words.long(sowing.date)}${bedName ? `, ${bedName}` : ''}`;

/** What the forecast comes to, in a sentence or two. */
export function gist(
  { emergence: { half }, stand, sowing }: DrawnForecast,
  today: string | null,
  words: DateWords,
): string {
  if ('why' in half) {
    return half.why === 'not-at-this-temperature'
      ? 'Nothing comes up at these temperatures.'
      : `Nothing is up by the count on ${words.short(stand.by)}.`;
  }
  const tense = today !== null && half.date < today ? 'was' : 'is';
  const when = `Half ${tense} up about ${words.short(half.date)}${rangeInWords(half, words)}.`;
  const [from, to] = [stand.seedlings?.from ?? stand.field.from, stand.seedlings?.to ?? stand.field.to].map(Math.round);
  return stand.seedlings && sowing.seeds
    ? `${when} Of ${sowing.seeds} seeds expect ${from} to ${to} seedlings.`
    : `${when} Of a hundred seeds expect ${from} to ${to} seedlings.`;
}

/** When a share of what comes is up. */
export function milestoneInWords(event: Event, milestone: DrawnMilestone, by: string, words: DateWords): string {
  const name = EVENT_WORDS[event];
  if ('why' in milestone) {
    return `${name}: ${milestone.why === 'not-by-count-day' ? `not by the count on ${words.short(by)}` : 'not at these temperatures'}`;
  }
  const { date, inBeds } = milestone;
  const slow = inBeds.to > date ? `; in slow beds to ${words.short(inBeds.to)}` : '';
  return `${name} ${words.short(date)}${rangeInWords(milestone, words)}${slow}`;
}

/** From when to when, where that is more than a day. */
function rangeInWords({ range: { from, to } }: Milestone, words: DateWords): string {
  if (to === null) return `, from ${words.short(from)} to after the count`;
  return from === to ? '' : `, between ${words.short(from)} and ${words.short(to)}`;
}

/** A spell as the picture names it. */
export const spellInWords = ({ kind, from, to, peakC }: KindOfSpell, words: DateWords, unit: Unit): string =>
  `${kind} ${words.span(from, to)}, ${kind === 'hot' ? 'up' : 'down'} to ${degrees(peakC, unit)}`;

/** What the picture says, for who does not see it. */
export function forecastInWords(
  forecast: DrawnForecast,
  { goodC, today }: ForecastSetting,
  words: DateWords,
  unit: Unit,
): string {
  const { emergence, stand } = forecast;
  const days = daysOf(forecast);
  const parts = stretches(days, () => true).map(
    ({ part, points }, i) =>
      // A stretch begins with the day before it.
      `${PARTS_IN_WORDS[part]} ${words.span(dateOfDay(points[i > 0 ? 1 : 0]!.day), dateOfDay(points.at(-1)!.day))}`,
  );
  const coldestC = days.reduce((least, { min }) => Math.min(least, min), Infinity);
  const warmestC = days.reduce((most, { max }) => Math.max(most, max), -Infinity);
  return [
    gist(forecast, today ?? null, words),
    ...EVENTS.map((event) => `${milestoneInWords(event, emergence[event], stand.by, words)}.`),
    days.length > 0
      ? `The temperature at the seed is ${degreesSpan(coldestC, warmestC, unit)}: ${parts.join(', ')}.`
      : 'No temperature at the seed is known.',
    goodC ? `The crop likes ${degreesSpan(goodC.from, goodC.to, unit)}.` : '',
    ...spellsOf(forecast).map((spell) => `Spell: ${spellInWords(spell, words, unit)}.`),
    today ? `Today is ${words.short(today)}.` : '',
    `The count is on ${words.short(stand.by)}.`,
  ]
    .filter(Boolean)
    .join(' ');
}
