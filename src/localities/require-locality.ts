import { type Fault, RequestError } from '../basics/errors.js';
import type { Fact } from '../basics/fact.js';
import { type FROSTS, localityChoice, localityFact, localityRefusal } from './locality-facts.js';
import type { LocalityIndex } from './locality-index.js';
import { type NamedLocality, near } from './near.js';

/** What a place's own climate says of its frost, to tell places of one name apart. */
export interface Frost {
  readonly frost: (typeof FROSTS)[number];
  /** The last frost of spring in the middle year, as MM-DD; null unless it is in spring. */
  readonly lastFrostOn: string | null;
}

const UNKNOWN_FROST: Frost = { frost: 'unknown', lastFrostOn: null };

/**
 * The locality that a question names.
 *
 * @param text    What the caller wrote.
 * @param where   The field or parameter that it stands in.
 * @param frostOf Tells the frost of a choice; asked for at most ten.
 * @returns The locality, and the assumption to tell if smaller places have its name too.
 * @throws {RequestError} `choose-locality` if several fit, with a choice for each; `unknown-locality` if none does, with
 *   those spelt alike as choices.
 */
export function requireLocality(
  index: LocalityIndex,
  text: string,
  where: Pick<Fault, 'path' | 'parameter'>,
  frostOf: (locality: NamedLocality) => Frost = () => UNKNOWN_FROST,
): { readonly locality: NamedLocality; readonly assumption: Fact | null } {
  const found = near(index, text);
  if (found.found === 'one') {
    const { locality, others } = found;
    return { locality, assumption: others === 0 ? null : localityFact('locality', { near: locality.near, others }) };
  }
  const choices = (localities: readonly NamedLocality[]) =>
    localities.map((locality) => {
      const { latitude, longitude, population: people, timeZone } = locality;
      const params = { latitude, longitude, people, timeZone, ...frostOf(locality) };
      return localityChoice(locality.near, 'choose-locality.choice', params);
    });
  if (found.found === 'several') {
    const detail = localityRefusal('choose-locality.send');
    throw new RequestError(
      'choose-locality',
      [localityRefusal('choose-locality', { name: text, places: found.count }), detail],
      [{ ...where, detail, choices: choices(found.localities) }],
    );
  }
  const isAlike = found.alike.length > 0;
  const detail = localityRefusal(isAlike ? 'unknown-locality.alike' : 'unknown-locality.send');
  throw new RequestError(
    'unknown-locality',
    [localityRefusal('unknown-locality', { name: text }), detail],
    [{ ...where, detail, ...(isAlike ? { choices: choices(found.alike) } : {}) }],
  );
}
