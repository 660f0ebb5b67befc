import { type LocalityIndex, NO_ELEVATION, type Region, TITLES_A_BLOCK, unpackPeople } from './locality-index.js';

/** A town, village or district that the index lists. */
export interface Locality {
  readonly name: string;
  /** The first-order region; null where the source has none. */
  readonly region: string | null;
  /** ISO 3166-1, two letters. */
  readonly country: string;
  readonly latitude: number;
  readonly longitude: number;
  /** Metres above the sea, from a model of the ground; null where unknown. */
  readonly elevationM: number | null;
  /** By the source, not by the coordinates: near a border the two differ. */
  readonly timeZone: string;
  /** Three significant digits; null where unknown. */
  readonly population: number | null;
}

export function localityAt(index: LocalityIndex, place: number): Locality {
  const { name: region, country, timeZone } = regionAt(index, place);
  const elevationM = index.elevation[place]!;
  return {
    name: titleAt(index, place),
    region,
    country,
    latitude: index.latitude[place]! / 100,
    longitude: index.longitude[place]! / 100,
    elevationM: elevationM === NO_ELEVATION ? null : elevationM,
    timeZone,
    population: index.people[place] === 0 ? null : unpackPeople(index.people[place]!),
  };
}

export const regionAt = (index: LocalityIndex, place: number): Region => index.regions[index.region[place]!]!;

function titleAt({ titleStart, titleLength, titles }: LocalityIndex, place: number): string {
  const block = Math.floor(place / TITLES_A_BLOCK);
  let start = titleStart[block]!;
  for (let before = block * TITLES_A_BLOCK; before < place; before++) start += titleLength[before]!;
  return new TextDecoder().decode(titles.subarray(start, start + titleLength[place]!));
}
