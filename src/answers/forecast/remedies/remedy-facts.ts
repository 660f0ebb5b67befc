import type { FactKinds, FactOf } from '../../../basics/fact.js';

const cooler = { coolerK: 'kelvin', coolerFromK: 'kelvin', coolerToK: 'kelvin' } as const;

/** What a grower can do about a spell of heat or cold: messages by `action.` and the action. */
export const remedyFacts = {
  'action.shade': cooler,
  'action.keep-wet': { ...cooler, moisture: ['moist', 'wet'] },
  'action.cover': {
    about: ['heat', 'cold'],
    cover: ['mulch', 'black-film', 'clear-film', 'fleece', 'fleece-or-film'],
    changeK: 'kelvin',
    changeFromK: 'kelvin',
    changeToK: 'kelvin',
    depthCm: 'cm',
  },
  'action.sow-in-evening': { at: 'text', insteadOf: 'text' },
  'action.wait': {
    about: ['heat', 'cold'],
    freeDate: 'date?',
    lookedToDate: 'date',
    thresholdC: 'celsius',
    hoursLeft: 'count',
  },
  'action.start-indoors': { about: ['heat', 'cold'], thresholdC: 'celsius' },
  'action.presprout-cool': { fromC: 'celsius', toC: 'celsius' },
  'action.presprout-warm': { fromC: 'celsius', toC: 'celsius', thresholdC: 'celsius' },
} as const satisfies FactKinds;

export type RemedyText = FactOf<typeof remedyFacts>;
