import { type FactKinds, factsOf } from '../basics/fact.js';

/** Why a question about what is kept cannot be answered. */
export const gardenRefusalFacts = {
  'no-past-years.plan': { years: 'count', minYears: 'number' },
  'no-readings.kept': { bed: 'text?', place: 'text' },
} as const satisfies FactKinds;

export const gardenRefusal = factsOf(gardenRefusalFacts);
