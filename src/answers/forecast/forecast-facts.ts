import type { FactKinds, FactOf } from '../../basics/fact.js';

/** What a forecast rests on. */
export const forecastAssumptionFacts = {
  curve: { crop: 'crop', source: 'text' },
  'moist-seedbed': { wettedOn: 'date?' },
  'count-day': { countDays: 'count', isOwn: ['yes', 'no'] },
  ranges: {},
  'beds-against-laboratory': { stand: ['crop', 'taught', 'own'], time: ['crop', 'taught', 'own'] },
  depth: { depthCm: 'cm' },
  lot: { about: ['forecast'] },
  normals: { about: ['forecast'], lastDate: 'date' },
  'past-years': { about: ['forecast'], lastDate: 'date', years: 'count' },
  'typical-years': { about: ['forecast'], lastDate: 'date', years: 'count' },
  'repeat-last-week': { lastDate: 'date' },
  'seasonal-drift': { lastDate: 'date', levelDays: 'count' },
  daylight: {},
  'zone-from-stamps': { timeZone: 'text' },
  'bed-as-measured': {},
  'own-rows': { hotThresholdC: 'celsius', marginK: 'kelvin' },
} as const satisfies FactKinds;

/** What a grower should heed of a forecast. */
export const forecastWarningFacts = {
  deep: { depthCm: 'cm', usualCm: 'cm' },
  'held-week': {},
  'thin-record': {},
  'too-cold-or-hot': { countDays: 'count' },
  'far-ahead': { about: ['forecast'], daysAhead: 'count' },
  'share-for-percent': { germinationPercent: 'number', meantPercent: 'number' },
  'hot-first-day': { hours: 'count', hotThresholdC: 'celsius' },
  extrapolated: { hours: 'count' },
  'killing-heat': { limitC: 'celsius', limitHours: 'count' },
  slow: { about: ['forecast'] },
  'old-test': { testedOn: 'date' },
} as const satisfies FactKinds;

/** What counts in the bed have taught: how many counts, of this sowing and of how many others. */
export const learnedFacts = {
  counts: {
    crop: 'crop',
    counts: 'count',
    otherSowings: 'count',
    isLost: ['yes', 'no'],
    timeFactorMiddle: 'number?',
    timeFactorFrom: 'number?',
    timeFactorTo: 'number?',
    standPercentMiddle: 'count?',
    standPercentFrom: 'count?',
    standPercentTo: 'count?',
  },
} as const satisfies FactKinds;

export type LearnedFact = FactOf<typeof learnedFacts>;
export type ForecastAssumption = FactOf<typeof forecastAssumptionFacts>;
export type ForecastWarning = FactOf<typeof forecastWarningFacts>;
