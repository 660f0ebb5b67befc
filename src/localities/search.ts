import type { LocalityIndex } from './locality-index.js';
import { lying } from './lying.js';
import { type NamedLocality, namedLocality } from './near.js';
import { placesAlike } from './places-alike.js';
import { placesBeginning } from './places-beginning.js';
import { placesOfText } from './places-of-text.js';
import { questionsOfName } from './question-of-name.js';

/** How a locality fits a text: its name is the text, begins with it, or differs from it in one letter. */
export type Match = 'name' | 'begins' | 'alike';

export interface FoundLocality extends NamedLocality {
  readonly match: Match;
}

/**
 * Localities that a text may mean, the likeliest first: those of the name; those whose name begins with it; and only
 * where there are none, those spelt alike.
 */
export function search(index: LocalityIndex, text: string, limit: number, country?: string): FoundLocality[] {
  const exact = placesOfText(index, text, country);
  const found = new Map<number, Match>();
  const add = (places: readonly number[], match: Match): void => {
    for (const place of places) if (found.size < limit && !found.has(place)) found.set(place, match);
  };
  add(
    exact.map(({ place }) => place),
    'name',
  );
  for (const question of questionsOfName(text)) {
    if (found.size >= limit) break;
    const take = lying(index, question, country, true);
    for (const key of new Set([question.key, question.begun])) add(placesBeginning(index, key, limit, take), 'begins');
    if (found.size > 0) break;
  }
  if (found.size === 0) add(placesAlike(index, text, limit, country), 'alike');
  return [...found].map(([place, match]) => ({ ...namedLocality(index, place), match }));
}
