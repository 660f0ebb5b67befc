import type { FactKinds, FactOf } from '../../basics/fact.js';

/** Why nothing reaches a week of harvest: one for each reason. */
export const gapFacts = {
  'gap.too-hot': { crop: 'crop' },
  'gap.too-cold': { crop: 'crop' },
  'gap.frost': { crop: 'crop', isTender: ['yes', 'no'] },
  'gap.too-late': { crop: 'crop' },
  'gap.maturity-unknown': { crop: 'crop' },
} as const satisfies FactKinds;

/** What helps one sowing of a plan. */
export const adviceFacts = {
  'start-indoors': { roomC: 'celsius?' },
  shade: { hotHours: 'count?', hotThresholdC: 'celsius' },
  'sow-in-evening': {},
  'lies-long': {},
} as const satisfies FactKinds;

/** What a plan rests on. */
export const planAssumptionFacts = {
  normals: { about: ['plan'] },
  'past-years': { about: ['plan'], years: 'count' },
  'typical-years': { about: ['plan'], years: 'count' },
  harvest: {
    fromDays: 'count',
    toDays: 'count',
    countedFrom: ['sowing', 'planting-out'],
    nominalC: 'celsius',
    pickFromDays: 'count',
    pickToDays: 'count',
    weeks: 'count',
    fullPaceHours: 'count',
    halfPaceHours: 'count',
  },
  'harvest-in-years': { pickDays: 'count', weeks: 'count' },
  'dates-graded': {},
  'even-emergence': {},
  'chart-time': { timesInBeds: 'number' },
  seeds: {},
  'stays-put': { crop: 'crop' },
  indoors: { roomC: 'celsius', weeksInTrays: 'count', hardeningDays: 'count' },
} as const satisfies FactKinds;

/** What a grower should heed of a plan. */
export const planWarningFacts = {
  'thin-years': { about: ['plan'], years: 'count' },
  'frost-unknown': { about: ['plan'] },
  'planting-out-unknown': { crop: 'crop' },
  'weather-of-growth': { crop: 'crop', isJudged: ['yes', 'no'] },
} as const satisfies FactKinds;

export type GapFact = FactOf<typeof gapFacts>;
export type Advice = FactOf<typeof adviceFacts>;
export type PlanAssumption = FactOf<typeof planAssumptionFacts>;
export type PlanWarning = FactOf<typeof planWarningFacts>;
