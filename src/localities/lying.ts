import { countryKeys } from './country-names.js';
import type { LocalityIndex } from './locality-index.js';
import { areLabels, type NameQuestion } from './question-of-name.js';

const UNKNOWN = 0;
const YES = 1;
const NO = 2;

/**
 * Tells which places lie where a question and a country say. The answer depends on the region alone, and is worked
 * out once for each.
 *
 * @param country  ISO 3166-1, two letters in upper case.
 * @param mayGoOn True if the last word may only have been begun.
 */
export function lying(
  index: LocalityIndex,
  { where, at }: Pick<NameQuestion, 'where' | 'at'>,
  country?: string,
  mayGoOn = false,
): (place: number) => boolean {
  const known = new Uint8Array(index.regions.length);
  const isIn = (region: number): boolean => {
    const { country: its, keys } = index.regions[region]!;
    return (country === undefined || its === country) && areLabels(where, [...keys, ...countryKeys(its)], mayGoOn);
  };
  return (place) => {
    if (at && (index.latitude[place] !== at[0] || index.longitude[place] !== at[1])) return false;
    const region = index.region[place]!;
    if (known[region] === UNKNOWN) known[region] = isIn(region) ? YES : NO;
    return known[region] === YES;
  };
}
