import {
  afternoonWords,
  dateMarks,
  idleWords,
  marchOrTuesday,
  monthWords,
  morningOrOf,
  morningWords,
  timeMarks,
  universalWords,
  zoneWords,
} from '../time-words.js';

/** The meaning of a word in a stamp: a month (1 to 12), or one of these. */
export const IDLE = 20;
export const MORNING = 21;
export const AFTERNOON = 22;
export const UNIVERSAL = 23;
export const ZONE = 24;
export const TIME_MARK = 25;
export const MARCH_OR_TUESDAY = 26;
export const MORNING_OR_OF = 27;
export const UNKNOWN = 99;

/** Words as written, with what they mean: the same few come back in every row. */
export type KnownWords = Map<string, number>;

const MAX_KNOWN_WORDS = 1000;
/** A longer piece of a text keeps all of the text in memory. */
const MAX_KNOWN_LETTERS = 12;

const fold = (word: string): string =>
  word
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase();
const listed: readonly (readonly [string, number])[] = [
  ...monthWords.map((words, i) => [words, i + 1] as const),
  [idleWords, IDLE],
  [morningWords, MORNING],
  [afternoonWords, AFTERNOON],
  [universalWords, UNIVERSAL],
  [zoneWords, ZONE],
  [[...timeMarks].join(' '), TIME_MARK],
  [[...dateMarks].join(' '), IDLE],
  [marchOrTuesday, MARCH_OR_TUESDAY],
  [morningOrOf, MORNING_OR_OF],
];
const meanings: ReadonlyMap<string, number> = new Map(
  listed.flatMap(([words, meaning]) => words.split(' ').map((word) => [fold(word), meaning])),
);

/** The meaning of a word of any case, with or without its accents. */
export function wordMeaning(word: string, known: KnownWords): number {
  if (word.length > MAX_KNOWN_LETTERS) return meanings.get(fold(word)) ?? UNKNOWN;
  let meaning = known.get(word);
  if (meaning === undefined) {
    meaning = meanings.get(fold(word)) ?? UNKNOWN;
    if (known.size >= MAX_KNOWN_WORDS) known.clear();
    known.set(word, meaning);
  }
  return meaning;
}
