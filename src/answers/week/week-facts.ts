import { type FactKinds, type FactOf, factsOf } from '../../basics/fact.js';

/** Facts about sowing and planting out in a week. */
export const weekFacts = {
  'week.sow': {
    crop: 'crop',
    method: ['direct', 'indoors'],
    grade: ['good', 'fair'],
    date: 'date',
    untilDate: 'date',
    lastCall: ['yes', 'no'],
    harvestFromDate: 'date?',
    harvestToDate: 'date?',
    roomC: 'celsius?',
    plantOutDate: 'date?',
  },
  'week.plant-out': { crop: 'crop', from: 'date', to: 'date' },
} as const satisfies FactKinds;

/** Facts about the coming days. */
export const aheadFacts = {
  'ahead.frost': { from: 'date', to: 'date', minC: 'celsius', nights: 'count' },
  'ahead.hot-spell': {
    crop: 'crop',
    from: 'date',
    to: 'date',
    peakC: 'celsius',
    thresholdC: 'celsius',
  },
} as const satisfies FactKinds;

export type WeekFact = FactOf<typeof weekFacts>;
export const aheadFact = factsOf(aheadFacts);
