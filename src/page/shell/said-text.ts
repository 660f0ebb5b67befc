import { inUnit } from '../../plot/degrees.js';
import { inFormNames } from '../form/form-names.js';
import { type Html, html } from './html.js';
import { day, isDate, type Reader } from './words.js';

const NUMBER = '-?\\d+(?:\\.\\d+)?';
/** A date, or one to three temperatures before a unit: `25 °C`, `10 to 15 °C`, `4 (2 to 6) °C`. */
const TOLD = new RegExp(
  `(?<![\\w-])(\\d{4}-\\d{2}-\\d{2})(?![\\w-])|(${NUMBER})(?:( to | and | \\()(${NUMBER})(?:( to )(${NUMBER})\\))?)? °C`,
  'g',
);
const BEFORE_DIFFERENCE = /\b(?:by|within)(?: about)? $/;
const AFTER_DIFFERENCE = /^ (?:cooler|warmer|colder|off|more|less)\b/;

/**
 * What the service says in words, in the reader's own: dates in the reader's language, temperatures in the reader's
 * degrees, things as they are called in the form. Differences of temperature are told apart by the words around them.
 */
export function saidText(said: string, reader: Reader): Html {
  const text = inFormNames(said);
  const parts: Html[] = [];
  let done = 0;
  for (const found of text.matchAll(TOLD)) {
    const [all, date, ...rest] = found;
    parts.push(html`${text.slice(done, found.index)}`);
    done = found.index + all.length;
    if (date !== undefined) {
      parts.push(isDate(date) ? day(date, reader, reader.today) : html`${date}`);
      continue;
    }
    const isDifference = BEFORE_DIFFERENCE.test(text.slice(0, found.index)) || AFTER_DIFFERENCE.test(text.slice(done));
    parts.push(html`${inDegrees(rest, isDifference, reader)}`);
  }
  return html`${parts}${text.slice(done)}`;
}

function inDegrees(
  [first, join = '', second, to = '', third]: readonly (string | undefined)[],
  isDifference: boolean,
  { degrees }: Reader,
): string {
  const turned = (said: string | undefined): string => {
    if (said === undefined || degrees === 'C') return said ?? '';
    const value = isDifference ? Number(said) * 1.8 : inUnit(Number(said), degrees);
    return String(said.includes('.') ? Math.round(value * 10) / 10 : Math.round(value));
  };
  return `${turned(first)}${join}${turned(second)}${to}${turned(third)}${third === undefined ? '' : ')'} °${degrees}`;
}
