import { shortened, words } from './fold.js';

/** One way to take a text: a name, and the words that say where it lies. */
export interface NameQuestion {
  readonly key: string;
  /** The key while the last word may go on: `fort` of Fortaleza, where `key` has it shortened. */
  readonly begun: string;
  readonly where: readonly string[];
  /** Hundredths of a degree, where the text ends in coordinates: `San José, Chiapas, MX (16.55, -92.10)`. */
  readonly at: readonly [latitude: number, longitude: number] | null;
}

/** More words are no name of a place, and each makes another way to take the text. */
const MAX_WORDS = 16;
/** Words that may say where, without a comma: `Ithaca New York United States of America`. */
const MAX_WORDS_OF_WHERE = 6;
const COORDINATES = /\(\s*(-?\d{1,2}(?:\.\d{1,6})?)\s*,\s*(-?\d{1,3}(?:\.\d{1,6})?)\s*\)\s*$/;

/**
 * The ways to take what a person wrote. A comma ends the name: `Ithaca, New York`. Without one the whole text is a name
 * first, and then ever fewer words of it, the others saying where: `New York`, `Ithaca New York US`.
 */
export function questionsOfName(text: string): NameQuestion[] {
  const found = COORDINATES.exec(text);
  const at = found ? ([hundredths(found[1]!), hundredths(found[2]!)] as const) : null;
  const [first = '', ...rest] = (found ? text.slice(0, found.index) : text).split(',');
  const name = words(first);
  const after = rest.flatMap(words);
  if (name.length === 0 || name.length + after.length > MAX_WORDS) return [];
  const question = (count: number): NameQuestion => {
    const named = name.slice(0, count);
    return {
      key: named.map(shortened).join(''),
      begun: [...named.slice(0, -1).map(shortened), named.at(-1)!].join(''),
      where: [...name.slice(count), ...after].map(shortened),
      at,
    };
  };
  if (rest.length > 0) return [question(name.length)];
  return name.slice(0, 1 + MAX_WORDS_OF_WHERE).map((_, i) => question(name.length - i));
}

const hundredths = (degrees: string): number => Math.round(Number(degrees) * 100);

/**
 * True if the words are labels of a place, one after another, each of one or more words: `new york us`.
 *
 * @param mayGoOn True if the last label may only have been begun.
 */
export function areLabels(where: readonly string[], labels: readonly string[], mayGoOn = false): boolean {
  if (where.length === 0) return true;
  let joined = '';
  for (let count = 1; count <= where.length; count++) {
    joined += where[count - 1]!;
    const rest = where.slice(count);
    if (labels.includes(joined) && areLabels(rest, labels, mayGoOn)) return true;
    const isLast = rest.length === 0;
    if (isLast && mayGoOn && labels.some((label) => label.startsWith(joined))) return true;
  }
  return false;
}
