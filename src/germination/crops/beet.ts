import { autumnSlows, treatedSeed, usualBedTime, usualField } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';
import { viabilitySet } from '../storage/viability-sets.js';

export const beet: CropRecord = {
  id: 'beet',
  name: 'Beet',
  latinName: 'Beta vulgaris',
  days: [null, 42, 17, 10, 6, 5, 5, 5, null],
  percent: [null, 53, 72, 88, 90, 97, 89, 35, null],
  soilF: { minimum: 40, optimumFrom: 50, optimumTo: 85, maximum: 95 },
  frost: 'half-hardy',
  chillingSensitive: false,
  sowingDepthCm: 1.5,
  maturity: { fromDays: 50, toDays: 80, countedFrom: 'sowing' }, // UC Napa
  storageYears: 4,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 20,
  spreadLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 3,
  pickingDays: 14,
  isThinned: true,
  isFed: true,
  viability: [viabilitySet('Ellis, Hong 2007', { ke: 8.988, cw: 4.969, ch: 0.0322, cq: 0.000454 }, 'beet')],
  cautions: [
    {
      code: 'seed-cluster',
      text:
        'Each "seed" is a small dried fruit with several seeds in it, so more seedlings may come than you ' +
        'sowed. Thin each clump to one plant.',
      source: 'Chicago Botanic Garden, on growing beets; single-seeded kinds are sold too (from memory)',
    },
    {
      code: 'crust',
      text:
        'Heavy rain on clay soil can set a crust that seedlings cannot lift. Sow shallow and keep the surface ' +
        'open.',
      source: 'Chicago Botanic Garden, on growing beets; the remedy common practice, no source',
    },
    treatedSeed,
    {
      code: 'bolts-after-cold',
      text:
        'Two to three weeks below 7 °C, once the plants have several true leaves, can send them to seed instead of ' +
        'making roots. Do not hurry the first sowing.',
      source: 'Cornell University, home gardening guide to beets; the advice common practice, no source',
    },
    autumnSlows,
  ],
};
