import { dateOfDay, dayOf } from '../plot/dates.js';
import { inUnit, type Unit } from '../plot/degrees.js';
import { type Html, html } from './html.js';

/** How the reader reads: dates in a language, temperatures in a unit. */
export interface Reader {
  /** A BCP 47 tag. */
  readonly locale: string;
  readonly degrees: Unit;
}

/** The date in a zone at an instant; in UTC where there is no such zone. */
export function dateIn(timeZone: string, atMs: number): string {
  const format = (zone: string) =>
    new Intl.DateTimeFormat('en-CA', { timeZone: zone, year: 'numeric', month: '2-digit', day: '2-digit' });
  try {
    return format(timeZone || 'UTC').format(atMs);
  } catch {
    return format('UTC').format(atMs);
  }
}

export const daysLater = (date: string, days: number): string => dateOfDay(dayOf(date) + days);

/** From one date to another [d]. */
export const daysFrom = (from: string, to: string): number => dayOf(to) - dayOf(from);

const formatted = (date: string, { locale }: Reader, options: Intl.DateTimeFormatOptions): string =>
  new Intl.DateTimeFormat(locale, { ...options, timeZone: 'UTC' }).format(new Date(`${date}T00:00Z`));

/** A date as the reader says it, as `Thursday 5 August`; the year where it is not this one. */
export function day(date: string, reader: Reader, today?: string): Html {
  const isOtherYear = today !== undefined && date.slice(0, 4) !== today.slice(0, 4);
  const text = formatted(date, reader, {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    ...(isOtherYear ? { year: 'numeric' } : {}),
  });
  return html`<time datetime="${date}" lang="${reader.locale}">${text}</time>`;
}

/** From one date to another, as `7–8 August`. */
export function span(from: string, to: string, reader: Reader): Html {
  const format = new Intl.DateTimeFormat(reader.locale, { day: 'numeric', month: 'long', timeZone: 'UTC' });
  const [start, end] = [from, to].map((date) => new Date(`${date}T00:00Z`)) as [Date, Date];
  return html`<span lang="${reader.locale}">${from === to ? format.format(start) : format.formatRange(start, end)}</span>`;
}

/** A date in short with its weekday, as `Thu 5 Aug`. */
export const weekdayAndDay = (date: string, reader: Reader): Html =>
  html`<time datetime="${date}" lang="${reader.locale}">${formatted(date, reader, { weekday: 'short', day: 'numeric', month: 'short' })}</time>`;

/** A date without its weekday, as `5 August`. */
export const dayMonth = (date: string, reader: Reader): string =>
  formatted(date, reader, { day: 'numeric', month: 'long' });

/** A date in short, as `5 Aug`. */
export const shortDay = (date: string, reader: Reader): Html =>
  html`<time datetime="${date}" lang="${reader.locale}">${shortDate(date, reader)}</time>`;

export const shortDate = (date: string, reader: Reader): string =>
  formatted(date, reader, { day: 'numeric', month: 'short' });

export const weekday = (date: string, reader: Reader): string => formatted(date, reader, { weekday: 'long' });

/** A temperature to a tenth, as `24.8 °C`. */
export const degreesOf = (tempC: number, { degrees }: Reader): string =>
  `${Math.round(inUnit(tempC, degrees) * 10) / 10} °${degrees}`;

/** Things one after another, as `a, b and c`. */
export const listed = (texts: readonly string[]): string =>
  texts.length < 2 ? texts.join('') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1)}`;

export const plural = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

/** From one number to another, as `60 to 130`. */
export const spanText = ({ from, to }: { readonly from: number; readonly to: number }): string =>
  from === to ? `${from}` : `${from} to ${to}`;
