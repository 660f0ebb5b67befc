import type { FactKinds, FactOf } from '../../basics/fact.js';

/** The last count, as a sentence tells it. */
const counted = { countedOn: 'date', seedlings: 'count', ofSeeds: 'count?' } as const;

/** How a sowing stands: one for each verdict. */
export const verdictFacts = {
  'verdict.wait': {
    countedOn: 'date?',
    found: ['nothing', 'some'],
    seedlings: 'count',
    ofSeeds: 'count?',
    firstDate: 'date?',
    countDate: 'date',
    mostRowsShow: ['yes', 'no'],
    livesPercent: 'count',
    isPast: ['yes', 'no'],
    moistUntilDate: 'date?',
  },
  'verdict.count-now': { lastCountOn: 'date?', isPast: ['yes', 'no'] },
  'verdict.late': {
    ...counted,
    found: ['nothing', 'some'],
    mostRowsShow: ['yes', 'no'],
    livesPercent: 'count',
    moistUntilDate: 'date?',
  },
  'verdict.lost': { lostPercent: 'count' },
  'verdict.thin': { ...counted, beforeOn: 'date?', beforeSeedlings: 'count' },
  'verdict.good': { ...counted, isThinned: ['yes', 'no'] },
} as const satisfies FactKinds;

const again = { isTooLate: ['yes', 'no'], from: 'date?', by: 'date?' } as const;

/** What there is to do about a sowing: one for each task. */
export const taskFacts = {
  'task.sow-again': again,
  'task.fill-gaps': again,
  'task.count': {},
  'task.keep-moist': { to: 'date' },
  'task.mind-heat': { thresholdC: 'celsius' },
  'task.mind-cold': { thresholdC: 'celsius' },
  'task.thin': {},
  'task.harden-off': {},
  'task.plant-out': { roomC: 'celsius' },
  'task.harvest': {},
} as const satisfies FactKinds;

/** What a grower should heed of a sowing. */
export const sowingWarningFacts = {
  'frost-before-harvest': { crop: 'crop', endDate: 'date' },
  'planting-out-unknown': { crop: 'crop' },
} as const satisfies FactKinds;

export type VerdictFact = FactOf<typeof verdictFacts>;
export type TaskFact = FactOf<typeof taskFacts>;
export type SowingWarning = FactOf<typeof sowingWarningFacts>;
