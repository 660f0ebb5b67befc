import type { FactKinds, FactOf } from '../../basics/fact.js';

/** That a row is to be sown again, how likely it is lost, and when there is time. */
export const sowAgainParams = {
  sureness: ['lost', 'probably', 'perhaps'],
  lostRows: 'count',
  ofRows: 'count',
  from: 'date?',
  by: 'date?',
  moistUntilDate: 'date?',
} as const;

/** What to do about a row that should be up: one for each thing to do. */
export const triageFacts = {
  'do.wait': {
    found: ['nothing', 'some'],
    livingRows: 'count',
    ofRows: 'count',
    lookOn: 'date',
    again: ['no', 'then', 'later'],
    againOn: 'date?',
    moistUntilDate: 'date?',
    isAlike: ['yes', 'no'],
    bareCounts: 'count',
  },
  'do.count': {},
  'do.sow-again': { ...sowAgainParams, isAlike: ['yes', 'no'] },
  'do.fill-gaps': { from: 'date?', by: 'date?' },
  'do.nothing': { why: ['stands', 'too-late'], crop: 'crop', hasFitting: ['yes', 'no'], fitting: 'crops' },
} as const satisfies FactKinds;

/** Why little or nothing came up: one for each thing to look for. */
export const checkFacts = {
  'check.dry': { moisture: ['rain', 'moist', 'wet', 'dry'] },
  'check.crust': {},
  'check.too-deep': { depthCm: 'cm', usualCm: 'cm' },
  'check.old-seed': { known: ['nothing', 'old', 'poor'], storageYears: 'count?', germinationPercent: 'number?' },
  'check.heat': { hours: 'count', thresholdC: 'celsius' },
  'check.cold': { meanC: 'celsius', minimumC: 'celsius' },
  'check.cold-spell': { hours: 'count', thresholdC: 'celsius' },
  'check.eaten': { beforeOn: 'date?', beforeSeedlings: 'count' },
  'check.wrong-date': { sownOn: 'date', goodPercent: 'count' },
} as const satisfies FactKinds;

export type TriageFact = FactOf<typeof triageFacts>;
export type CheckFact = FactOf<typeof checkFacts>;
