import type { FactKinds, FactOf } from '../../basics/fact.js';

const crop = { crop: 'crop' } as const;
const where = { where: ['bed', 'indoors'] } as const;

/** What an event of a calendar is called, and under `.detail` what it says: both for each kind of event. */
export const eventFacts = {
  'event.sow': { ...crop, ...where },
  'event.sow.detail': { bed: 'text', ...where, seeds: 'count?', time: 'text?' },
  'event.keep-moist': crop,
  'event.keep-moist.detail': {},
  'event.look-for-seedlings': crop,
  'event.look-for-seedlings.detail': { halfDate: 'date?', fromPercent: 'count', toPercent: 'count' },
  'event.look-for-seedlings.planned': {},
  'event.thin': crop,
  'event.thin.detail': {},
  'event.feed': crop,
  'event.feed.detail': {},
  'event.harden-off': crop,
  'event.harden-off.detail': {},
  'event.plant-out': crop,
  'event.plant-out.detail': { bed: 'text' },
  'event.first-harvest': crop,
  'event.first-harvest.detail': { bed: 'text' },
  'event.last-harvest': crop,
  'event.last-harvest.detail': { bed: 'text' },
  'event.sow-again': crop,
  'event.sow-again.detail': { sownOn: 'date' },
  'event.heat': { ...crop, severity: ['mild', 'severe'] },
  'event.heat.detail': { peakC: 'celsius', thresholdC: 'celsius' },
  'event.frost': { crops: 'crops' },
  'event.frost.detail': { bed: 'text', minC: 'celsius' },
} as const satisfies FactKinds;

export type EventFact = FactOf<typeof eventFacts>;
