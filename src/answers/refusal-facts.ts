import { type FactKinds, factsOf } from '../basics/fact.js';

/** Why a question cannot be answered. `….field`: what is told of the field that would mend it. */
export const answerRefusalFacts = {
  'no-latitude.soil': {},
  'no-latitude.soil.field': {},
  'ends-too-early.soil': { lastDate: 'date', to: 'date' },
  'ends-too-early.soil.field': { lastDate: 'date' },
  'ends-too-early.before-wetting': { lastDate: 'date' },
  'ends-too-early.before-count': { lastDate: 'date', countDate: 'date' },
  'ends-too-early.before-count.field': {},
  'not-understood.wetted-before-sowing': { wettedOn: 'date', sowingDate: 'date' },
  'not-understood.wetted-before-sowing.field': {},
  'not-understood.wetted-after-count': { wettedOn: 'date', countDate: 'date' },
  'not-understood.wetted-after-count.field': {},
  'gap-too-long': { fromAt: 'text', toAt: 'text' },
  'gap-too-long.around': { date: 'date' },
  'too-few-readings': {},
  'starts-after-sowing': { firstDate: 'date' },
  'starts-after-sowing.field': { firstDate: 'date' },
  'no-past-years.beyond': { minYears: 'number' },
  'no-past-years.beyond.field': { minYears: 'number' },
  'no-past-years.windows': { years: 'count', minYears: 'number' },
  'no-past-years.windows.field': { minYears: 'number' },
  'no-past-years.no-minima': {},
  'no-past-years.no-season': { from: 'date', to: 'date' },
} as const satisfies FactKinds;

export const answerRefusal = factsOf(answerRefusalFacts);
