import type { FactKinds, FactOf } from '../../basics/fact.js';
import { sowAgainParams } from '../sowing/triage-facts.js';

/** The sowing that something is new of. */
const sown = { crop: 'crop', bed: 'text', sownOn: 'date' } as const;

/** What is new: one for each event that can be subscribed to. */
export const newsFacts = {
  'news.hot-spell': {
    ...sown,
    from: 'date',
    to: 'date',
    peakC: 'celsius',
    thresholdC: 'celsius',
    severity: ['mild', 'severe'],
    spells: 'count',
  },
  'news.emergence-shift': { ...sown, halfOn: 'date?', beforeOn: 'date?', shiftDays: 'count', isLater: ['yes', 'no'] },
  'news.frost': { ...sown, date: 'date', minC: 'celsius', nights: 'count' },
  'news.sow-again': { ...sown, ...sowAgainParams },
  'news.window-open': { crop: 'crop', bed: 'text', to: 'date' },
} as const satisfies FactKinds;

export type NewsFact = FactOf<typeof newsFacts>;
