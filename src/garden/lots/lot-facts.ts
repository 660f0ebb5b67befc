import type { FactKinds, FactOf } from '../../basics/fact.js';
import { viabilityKin } from '../../germination/storage/viability-sets.js';

/** What is known of a lot, and what a grower should heed of it. */
export const lotFacts = {
  'lot-test': { germinated: 'count', sown: 'count' },
  'lot-packet': { germinationPercent: 'number' },
  'lot-unknown': {},
  'lot-not-aged': {
    why: ['partly', 'undated', 'unpublished', 'outside'],
    moistureFromPercent: 'number',
    moistureToPercent: 'number',
    storeFromC: 'celsius',
    storeToC: 'celsius',
  },
  'lot-aged': { days: 'count', moisturePercent: 'number', storeC: 'celsius', sources: 'text' },
  'lot-constants-differ': {},
  'lot-constants-of-kin': { kin: viabilityKin, otherKin: [...viabilityKin, 'nothing'] },
  'lot-age-unknown': {},
  'older-seed-later': {},
  'test-before-use': { storageYears: 'count' },
  'percent-or-share': { germinationPercent: 'number', meantPercent: 'number' },
} as const satisfies FactKinds;

/** What the number of seeds for so many plants rests on, and what to heed. */
export const seedsFacts = {
  lot: { about: ['seeds'], chartPercent: 'count' },
  field: { fromPercent: 'number', toPercent: 'number', isRange: ['yes', 'no'], whose: ['crop', 'own'] },
  'one-lot-one-bed': {},
  'poor-seed': { percent: 'count' },
} as const satisfies FactKinds;

export type LotNote = FactOf<typeof lotFacts>;
export type SeedsNote = FactOf<typeof seedsFacts>;
