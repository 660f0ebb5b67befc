import { type LocalityIndex, unpackPeople } from './locality-index.js';
import { lying } from './lying.js';
import { type NameMatch, placesNamed } from './name-table.js';
import { questionsOfName } from './question-of-name.js';

/** The places that a text names exactly, by the first way to take it that names any; the likeliest first. */
export function placesOfText(index: LocalityIndex, text: string, country?: string): NameMatch[] {
  for (const question of questionsOfName(text)) {
    const lies = lying(index, question, country);
    for (const key of spellings(question.key)) {
      const found = placesNamed(index, key).filter(({ place }) => lies(place));
      if (found.length > 0)
        return found.sort((a, b) => likelihood(index, b) - likelihood(index, a) || a.place - b.place);
    }
  }
  return [];
}

/** A key, and the same with umlauts that were written out: `duesseldorf`, `aarhus`. */
const spellings = (key: string): string[] => {
  const shorter = key.replaceAll(/([aou])e/g, '$1').replaceAll('aa', 'a');
  return shorter === key ? [key] : [key, shorter];
};

/**
 * One that has the name only in another spelling or language needs so many times the people of one that is listed by
 * it: Rome is Roma (200 times the people of the largest Roma), but York is not Toronto.
 */
export const MIN_TIMES_BY_OTHER_NAME = 100;
/** People of a place whose number the source does not know: it lists places from 500 people on, and smaller seats. */
const UNKNOWN_PEOPLE = 1000;

export const peopleOf = (index: LocalityIndex, place: number): number =>
  index.people[place] === 0 ? UNKNOWN_PEOPLE : unpackPeople(index.people[place]!);

/** Orders what one name may mean: by people, and listed names before others. */
export const likelihood = (index: LocalityIndex, { place, isMain }: NameMatch): number =>
  peopleOf(index, place) / (isMain ? 1 : MIN_TIMES_BY_OTHER_NAME);
