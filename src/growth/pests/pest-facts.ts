import { type FactKinds, type FactOf, factsOf } from '../../basics/fact.js';

/** Several broods differ in what is said of them; `none`: all years have the same date. */
const dates = { fromDate: 'date', peakDate: 'date', toDate: 'date', spread: ['days', 'none'] } as const;
const of = { brood: 'count', ...dates } as const;

/** What threatens a row, and what helps: messages by `risk.` and the risk. */
export const riskFacts = {
  'risk.seedcorn-maggot': of,
  'risk.onion-maggot': of,
  'risk.cabbage-maggot': of,
  'risk.carrot-rust-fly': of,
  'risk.carrot-weevil': dates,
  'risk.damping-off': {},
} as const satisfies FactKinds;

export type RiskFact = FactOf<typeof riskFacts>;

/** The basis of all risks by heat sums. */
export const riskNoteFacts = { 'pest-dates': { years: 'count' } } as const satisfies FactKinds;
export const riskNote = factsOf(riskNoteFacts);
