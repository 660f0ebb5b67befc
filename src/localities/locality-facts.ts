import { choicesOf, type FactKinds, factsOf } from '../basics/fact.js';

/** The larger one of several of a name, taken for it. */
export const localityFacts = { locality: { near: 'text', others: 'count' } } as const satisfies FactKinds;

export const FROSTS = ['unknown', 'never', 'in-spring'] as const;

export const localityRefusalFacts = {
  'choose-locality': { name: 'text', places: 'count' },
  'choose-locality.send': {},
  'choose-locality.choice.reads': { latitude: 'number', longitude: 'number', people: 'number?' },
  'choose-locality.choice.consequence': { frost: FROSTS, lastFrostOn: 'date?', timeZone: 'text' },
  'unknown-locality': { name: 'text' },
  'unknown-locality.alike': {},
  'unknown-locality.send': {},
  'not-understood.locality-question': { fault: ['missing', 'both'] },
} as const satisfies FactKinds;

export const localityFact = factsOf(localityFacts);
export const localityRefusal = factsOf(localityRefusalFacts);
export const localityChoice = choicesOf(localityRefusalFacts);
