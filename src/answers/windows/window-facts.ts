import { type FactKinds, type FactOf, factsOf } from '../../basics/fact.js';

/** What sowing windows rest on, and what should be heeded of them. */
export const windowFacts = {
  normals: { about: ['windows'] },
  'past-years': { about: ['windows'], years: 'count' },
  'good-date': {
    sharePercent: 'count',
    ifHeldPercent: 'count',
    maxDays: 'count',
    frost: ['tender', 'tender-planted-out', 'half-hardy', 'not-counted'],
    frostFreeDays: 'count',
    frostC: 'celsius',
  },
  'thin-years': { about: ['windows'], years: 'count' },
  'frost-unknown': { about: ['windows'] },
  'frost-hardy': {},
  'heat-ahead': { isAll: ['yes', 'no'], inYears: 'count', ofYears: 'count', thresholdC: 'celsius' },
} as const satisfies FactKinds;

/** Why a date is the best one. */
export const bestDateFacts = {
  'why.best-date': {
    isEarliest: ['yes', 'no'],
    sharePercent: 'count',
    maxDays: 'count',
    inYears: 'count',
    ofYears: 'count',
    halfDays: 'count?',
    halfFromDays: 'count?',
    halfToDays: 'count?',
  },
} as const satisfies FactKinds;

/** What frost dates rest on. */
export const frostFacts = {
  'frost-in-the-air': {},
  'frost-left-out': {},
} as const satisfies FactKinds;

/** What should be heeded of frost dates. */
export const frostWarningFacts = {
  'frost-hollow': { summer: ['north', 'south'] },
} as const satisfies FactKinds;
export const frostWarning = factsOf(frostWarningFacts);

export type WindowNote = FactOf<typeof windowFacts>;
export type BestDateWhy = FactOf<typeof bestDateFacts>;
export type FrostNote = FactOf<typeof frostFacts>;
