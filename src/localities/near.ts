import { type Locality, localityAt } from './locality.js';
import type { LocalityIndex } from './locality-index.js';
import type { NameMatch } from './name-table.js';
import { placesAlike } from './places-alike.js';
import { MIN_TIMES_BY_OTHER_NAME, peopleOf, placesOfText } from './places-of-text.js';

/** A locality with the text that finds it, and no other. */
export interface NamedLocality extends Locality {
  readonly near: string;
}

export type Near =
  /** `others`: how many smaller ones have the same name; the larger one is then an assumption to be told. */
  | { readonly found: 'one'; readonly locality: NamedLocality; readonly others: number }
  | { readonly found: 'several'; readonly localities: readonly NamedLocality[]; readonly count: number }
  | { readonly found: 'none'; readonly alike: readonly NamedLocality[] };

/** One of several of a name is meant if it has so many times the people of the next. */
export const MIN_TIMES_THE_PEOPLE = 10;
const MAX_CHOICES = 10;
const MAX_ALIKE = 5;

/**
 * The one locality that a text means, several, or none.
 *
 * @param text    A name, also with region and country, such as `Portland, ME` or `Paris, Texas, US`.
 * @param country ISO 3166-1, two letters in upper case, to look in.
 */
export function near(index: LocalityIndex, text: string, country?: string): Near {
  const matches = placesOfText(index, text, country);
  if (matches.length === 0) {
    return {
      found: 'none',
      alike: placesAlike(index, text, MAX_ALIKE, country).map((place) => namedLocality(index, place)),
    };
  }
  const meant = meantOf(index, matches);
  if (meant !== undefined) return { found: 'one', locality: namedLocality(index, meant), others: matches.length - 1 };
  const localities = matches.slice(0, MAX_CHOICES).map(({ place }) => namedLocality(index, place));
  return { found: 'several', localities, count: matches.length };
}

/** The likeliest place if it is so much larger than all others that it is meant; undefined where none is. */
function meantOf(index: LocalityIndex, [largest, ...others]: readonly NameMatch[]): number | undefined {
  if (!largest) return undefined;
  const people = ({ place }: NameMatch): number => peopleOf(index, place);
  const times = (other: NameMatch): number => {
    if (largest.isMain === other.isMain) return MIN_TIMES_THE_PEOPLE;
    return largest.isMain ? 1 : MIN_TIMES_BY_OTHER_NAME;
  };
  return others.every((other) => people(largest) >= times(other) * people(other)) ? largest.place : undefined;
}

/** A place with the shortest text that means it: its name, region and country, and its coordinates if these leave it open. */
export function namedLocality(index: LocalityIndex, place: number): NamedLocality {
  const locality = localityAt(index, place);
  const { name, region, country, latitude, longitude } = locality;
  const plain = [name, ...(region === null ? [] : [region]), country].join(', ');
  const isEnough = meantOf(index, placesOfText(index, plain)) === place;
  return { near: isEnough ? plain : `${plain} (${latitude.toFixed(2)}, ${longitude.toFixed(2)})`, ...locality };
}
