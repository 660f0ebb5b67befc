import type { MessageFormatElement } from '@formatjs/icu-messageformat-parser';
import { type Formatters, IntlMessageFormat, type PrimitiveType } from 'intl-messageformat';
import type { PageCode } from '../../words/page-en.js';
import { pictureText } from '../../words/picture-text.js';
import { type Html, type HtmlPart, html } from './html.js';

/** A message: plain text, or a parsed ICU pattern. The service parses, because a parser is large. */
export type Message = string | readonly MessageFormatElement[];
export type Messages = Readonly<Record<string, Message>>;

/** A message parameter: markup or text, or a function that wraps the text between the tags of its name. */
export type Told = HtmlPart | ((inner: Html) => Html);

export interface Speech {
  /** One of the page’s messages, as text. */
  readonly say: (code: PageCode, values?: Readonly<Record<string, string | number>>) => string;
  /** One of the page’s messages, with markup in it. */
  readonly tell: (code: PageCode, parts: Readonly<Record<string, Told>>) => Html;
  /** A picture's text, with worded parameters. */
  readonly ofPicture: (code: string, values: Readonly<Record<string, string | number>>) => string;
  /** A crop's name within a sentence; undefined for a crop outside the chart. */
  readonly crop: (id: string) => string | undefined;
}

/** Number fields take no thousands separators, so sentences have none either. */
const PLAIN: Intl.NumberFormatOptions = { useGrouping: false, maximumFractionDigits: 2 };

/** Messages format only numbers of one kind; making a format takes longer than formatting a hundred numbers. */
function formattersIn(locale: string): Formatters {
  const [numbers, plurals] = [new Intl.NumberFormat(locale, PLAIN), new Intl.PluralRules(locale)];
  return {
    getNumberFormat: () => numbers,
    getPluralRules: () => plurals,
    getDateTimeFormat: (...all) => new Intl.DateTimeFormat(...all),
  };
}

/**
 * The page's messages in a reader's language.
 *
 * @param locale BCP 47 tag that numbers are formatted for.
 */
export function speechIn(messages: Messages, locale: string): Speech {
  const formatters = formattersIn(locale);
  const formats = new Map<string, IntlMessageFormat>();
  const formatOf = (code: string, message: Exclude<Message, string>): IntlMessageFormat => {
    const known = formats.get(code);
    if (known) return known;
    const made = new IntlMessageFormat([...message], locale, undefined, {
      formatters,
    });
    formats.set(code, made);
    return made;
  };
  const partsOf = (code: string, values: Readonly<Record<string, Told>>): readonly HtmlPart[] => {
    const message = messages[code];
    if (message === undefined) throw new Error(`no message is called ${code}`);
    if (typeof message === 'string') return [message];
    return formatOf(code, message)
      .formatToParts<Html>(Object.fromEntries(Object.entries(values).map(([name, value]) => [name, valueFor(value)])))
      .map(({ value }) => value as HtmlPart);
  };
  return {
    say: (code, values = {}) => partsOf(code, values).join(''),
    tell: (code, parts) => html`${partsOf(code, parts)}`,
    ofPicture: (code, values) => pictureText(partsOf(code, values).join(''), locale),
    crop: (id) => (typeof messages[`crop.${id}`] === 'string' ? (messages[`crop.${id}`] as string) : undefined),
  };
}

type Value = PrimitiveType | Html | ((inner: (string | Html)[]) => Html);

function valueFor(told: Told): Value {
  if (typeof told === 'function') return (inner) => told(html`${inner}`);
  return typeof told === 'string' || typeof told === 'number' ? told : html`${told}`;
}
