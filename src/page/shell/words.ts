import { dateOfDay, dayOf, remembered } from '../../plot/dates.js';
import { inUnit, type PlotUnit } from '../../plot/degrees.js';
import type { Language } from '../../words/reader.js';
import { type Html, type HtmlPart, html } from './html.js';
import type { Speech } from './say.js';

/** The reader's language, locale of numbers and dates, and unit of temperatures. */
export interface PageReader extends Speech {
  readonly language: Language;
  /** A BCP 47 tag of the language. */
  readonly locale: string;
  readonly degrees: PlotUnit;
  /** The date at the question's place: dates of other years are shown with their year. */
  readonly today?: string;
}

/** The date in a zone at an instant; in UTC if the zone is unknown. */
export function dateIn(timeZone: string, atMs: number): string {
  try {
    return dateFormat(timeZone || 'UTC').format(atMs);
  } catch {
    return dateFormat('UTC').format(atMs);
  }
}

const dateFormat = remembered(
  (timeZone: string) =>
    new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' }),
);

/** True for a valid date in the format of a date field. */
export const isDate = (text: string): boolean =>
  /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(Date.parse(text)) && new Date(text).toISOString().startsWith(text);

export const daysLater = (date: string, days: number): string => dateOfDay(dayOf(date) + days);

/** Days from one date to another [d]. */
export const daysFrom = (from: string, to: string): number => dayOf(to) - dayOf(from);

const LOOKS = {
  day: { weekday: 'long', day: 'numeric', month: 'long' },
  dayAndYear: { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' },
  date: { day: 'numeric', month: 'long' },
  weekdayAndDay: { weekday: 'short', day: 'numeric', month: 'short' },
  short: { day: 'numeric', month: 'short' },
  shortAndYear: { day: 'numeric', month: 'short', year: 'numeric' },
  weekday: { weekday: 'long' },
  month: { month: 'long' },
} as const satisfies Record<string, Intl.DateTimeFormatOptions>;

/** Making a format takes longer than formatting a hundred dates. */
const made = new Map<string, Intl.DateTimeFormat>();
const MAX_MADE = 100;

function format(look: keyof typeof LOOKS, { locale }: PageReader): Intl.DateTimeFormat {
  const name = `${look} ${locale}`;
  const known = made.get(name);
  if (known) return known;
  if (made.size >= MAX_MADE) made.clear();
  const fresh = new Intl.DateTimeFormat(locale, { ...LOOKS[look], timeZone: 'UTC' });
  made.set(name, fresh);
  return fresh;
}

const at = (date: string): Date => new Date(`${date}T00:00Z`);
const written = (date: string, look: keyof typeof LOOKS, reader: PageReader): string =>
  format(look, reader).format(at(date));

const timed = (date: string, look: keyof typeof LOOKS, reader: PageReader): Html =>
  html`<time datetime="${date}" lang="${reader.locale}">${written(date, look, reader)}</time>`;

/** A date in the reader's words, as `Thursday 5 August`; with its year if that is not today's. */
export const day = (date: string, reader: PageReader, today?: string): Html =>
  timed(date, today !== undefined && date.slice(0, 4) !== today.slice(0, 4) ? 'dayAndYear' : 'day', reader);

/** The same as plain text. */
export const dayText = (date: string, reader: PageReader): string => written(date, 'day', reader);

/** A span of dates, as `7–8 August`. */
export const span = (
  from: string,
  to: string,
  reader: PageReader,
  look: 'date' | 'short' | 'shortAndYear' = 'date',
): Html =>
  html`<span lang="${reader.locale}">${
    from === to ? written(from, look, reader) : format(look, reader).formatRange(at(from), at(to))
  }</span>`;

/** A date without its weekday, with its year if that is not today's. */
export const dateInShort = (date: string, reader: PageReader, today: string): Html =>
  timed(date, date.slice(0, 4) === today.slice(0, 4) ? 'date' : 'shortAndYear', reader);

/** A date in short with its weekday, as `Thu 5 Aug`. */
export const weekdayAndDay = (date: string, reader: PageReader): Html => timed(date, 'weekdayAndDay', reader);

/** A date without its weekday, as `5 August`. */
export const dayMonth = (date: string, reader: PageReader): string => written(date, 'date', reader);

/** A date in short with its year, as `5 Aug 2027`. */
export const dateText = (date: string, reader: PageReader): string => written(date, 'shortAndYear', reader);

/** A date in short, as `5 Aug`. */
export const shortDay = (date: string, reader: PageReader): Html => timed(date, 'short', reader);

/** @param month 1 to 12. */
export const monthName = (month: number, reader: PageReader): string =>
  written(`2027-${String(month).padStart(2, '0')}-01`, 'month', reader);

export const weekday = (date: string, reader: PageReader): string => written(date, 'weekday', reader);

const numbers = remembered(
  (locale: string) => new Intl.NumberFormat(locale, { useGrouping: false, maximumFractionDigits: 2 }),
);

/** A number in the reader's format. */
export const numberText = (value: number, { locale }: PageReader): string => numbers(locale).format(value);

/** A temperature to a tenth, as `24.8 °C`. */
export const degreesOf = (tempC: number, reader: PageReader): string =>
  `${tenthOf(inUnit(tempC, reader.degrees), reader)} °${reader.degrees}`;

/** A number to a tenth, in the reader's format. */
export const tenthOf = (value: number, reader: PageReader): string => numberText(Math.round(value * 10) / 10, reader);

/** How a language joins lists: English as in England, without a comma before `and`. */
const LIST_LOCALES: Readonly<Record<Language, string>> = { en: 'en-GB', de: 'de-DE' };

/** A list in words, as `a, b and c`. */
export const listed = (
  parts: readonly HtmlPart[],
  { language }: PageReader,
  type: 'conjunction' | 'disjunction',
): Html => {
  const list = new Intl.ListFormat(LIST_LOCALES[language], { type });
  return html`${list.formatToParts(parts.map((_, i) => String(i))).map(({ type: kind, value }) => (kind === 'element' ? parts[Number(value)] : value))}`;
};

/** A numeric range, as `60 to 130`. */
export const spanText = ({ from, to }: { readonly from: number; readonly to: number }, reader: PageReader): string =>
  from === to ? numberText(from, reader) : reader.say('page.of.span', { from, to });

/** A share per hundred, as `9 of 100`. */
export const ofHundred = (share: number, { say }: PageReader): string =>
  say('page.of.hundred', { count: Math.round(100 * share) });

/** A name with a capital, to begin a sentence or stand alone. */
export const capital = (text: string, { locale }: PageReader): string =>
  text.charAt(0).toLocaleUpperCase(locale) + text.slice(1);
