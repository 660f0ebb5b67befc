import type { ParamKind } from '../basics/fact.js';
import type { Reader } from './reader.js';

/** The `select` value for a missing parameter. */
export const MISSING = 'none';

/** A code as an ICU selector, which holds no hyphen. */
export const selectorOf = (code: string): string => code.replaceAll('-', '_');

const CM_PER_INCH = 2.54;
const MM_PER_INCH = 25.4;

/**
 * A parameter in the reader's format: text, or the number itself for plurals.
 *
 * @param value null if missing.
 */
export function valueFor(kind: ParamKind, value: string | number | null, reader: Reader): string | number {
  if (value === null) return MISSING;
  if (typeof kind !== 'string') return selectorOf(String(value));
  const isFahrenheit = reader.textUnit === 'F';
  switch (kind.replace('?', '')) {
    case 'celsius':
      return isFahrenheit
        ? `${numberFor(alike(Number(value), toFahrenheit), reader)} °F`
        : `${numberFor(tenth(value), reader)} °C`;
    case 'kelvin':
      return isFahrenheit
        ? `${numberFor(
            alike(Number(value), (kelvin) => kelvin * 1.8),
            reader,
          )} °F`
        : `${numberFor(tenth(value), reader)} °C`;
    case 'cm':
      return isFahrenheit
        ? `${numberFor(tenth(Number(value) / CM_PER_INCH), reader)} in`
        : `${numberFor(tenth(value), reader)} cm`;
    case 'mm':
      return isFahrenheit
        ? `${numberFor(tenth(Number(value) / MM_PER_INCH), reader)} in`
        : `${numberFor(Math.round(Number(value)), reader)} mm`;
    case 'number':
      return numberFor(Number(value), reader);
    case 'anyOf':
      return lists(reader.locale).format(String(value).split(', '));
    case 'date':
      return dateFor(String(value), reader);
    default:
      return value;
  }
}

const tenth = (value: string | number): number => Math.round(Number(value) * 10) / 10;
const toFahrenheit = (tempC: number): number => tempC * 1.8 + 32;

/** Converts without changing precision, whole to whole and tenths to tenths: 12 K is a jump of 22 °F, not of 21.6. */
function alike(value: number, turn: (value: number) => number): number {
  const isWhole = Number.isInteger(tenth(value));
  return isWhole ? Math.round(turn(tenth(value))) : tenth(turn(value));
}

const numberFor = (value: number, { locale }: Reader): string => numbers(locale).format(value);

/**
 * A calendar date, or a day of each year such as `05-20`. A text that is neither, possible only in a refusal, is returned unchanged.
 */
function dateFor(date: string, { locale }: Reader): string {
  if (/^\d\d-\d\d$/.test(date)) return daysOfYears(locale).format(Date.parse(`${A_LEAP_YEAR}-${date}T00:00Z`));
  const at = Date.parse(`${date}T00:00Z`);
  return Number.isNaN(at) ? date : dates(locale).format(at);
}

const numbers = byLocale((locale) => new Intl.NumberFormat(locale, { maximumFractionDigits: 2, useGrouping: 'min2' }));
const lists = byLocale((locale) => new Intl.ListFormat(locale, { type: 'disjunction' }));
const A_LEAP_YEAR = 2024;
const daysOfYears = byLocale(
  (locale) => new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'long', timeZone: 'UTC' }),
);
const dates = byLocale(
  (locale) => new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' }),
);

/** Making a format takes longer than formatting a hundred values; there are about three hundred countries. */
function byLocale<T>(make: (locale: string) => T): (locale: string) => T {
  const made = new Map<string, T>();
  return (locale) => {
    const known = made.get(locale);
    if (known) return known;
    const fresh = make(locale);
    made.set(locale, fresh);
    return fresh;
  };
}
