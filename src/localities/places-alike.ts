import type { LocalityIndex } from './locality-index.js';
import { lying } from './lying.js';
import { placesNamed } from './name-table.js';
import { questionsOfName } from './question-of-name.js';

const LETTERS = 'abcdefghijklmnopqrstuvwxyz';
/** Shorter names are alike by chance. */
const MIN_KEY = 3;
/** Some 54 look-ups a letter, each of a few microseconds. */
const MAX_KEY = 40;

/**
 * The largest places whose name differs in one letter: one too many, one missing, another one, or two that changed
 * places. Those that lie where the text says come first.
 */
export function placesAlike(index: LocalityIndex, text: string, limit: number, country?: string): number[] {
  const questions = questionsOfName(text);
  const [whole] = questions;
  if (!whole) return [];
  const shortest = questions.at(-1)!;
  const within = new Set<number>();
  const anywhere = new Set<number>();
  const isInCountry = lying(index, { where: [], at: null }, country);
  for (const question of whole === shortest ? [whole] : [whole, shortest]) {
    const lies = lying(index, question, country);
    for (const key of [question.key, ...oneLetterOff(question.key)]) {
      for (const { place } of placesNamed(index, key)) {
        if (lies(place)) within.add(place);
        else if (isInCountry(place)) anywhere.add(place);
      }
    }
  }
  const bySize = (places: Iterable<number>): number[] => [...places].sort((a, b) => a - b);
  return [...bySize(within), ...bySize(anywhere).filter((place) => !within.has(place))].slice(0, limit);
}

function* oneLetterOff(key: string): Generator<string> {
  const letters = [...key];
  if (letters.length < MIN_KEY || letters.length > MAX_KEY) return;
  for (let i = 0; i <= letters.length; i++) {
    const before = letters.slice(0, i).join('');
    const after = letters.slice(i + 1).join('');
    const here = letters[i];
    if (here !== undefined) yield before + after;
    if (i + 1 < letters.length) yield before + letters[i + 1]! + here! + letters.slice(i + 2).join('');
    for (const letter of LETTERS) {
      yield before + letter + (here ?? '') + after;
      if (here !== undefined) yield before + letter + after;
    }
  }
}
