import { hotSideUntested, treatedSeed, usualBedTime, usualField } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';
import { COMMON_TERMS, viabilitySet } from '../storage/viability-sets.js';

export const watermelon: CropRecord = {
  id: 'watermelon',
  name: 'Watermelon',
  latinName: 'Citrullus lanatus',
  days: [null, 'none', null, null, 12, 5, 4, 3, null],
  percent: [null, 0, null, 17, 94, 90, 92, 96, null],
  soilF: { minimum: 60, optimumFrom: 70, optimumTo: 95, maximum: 105 },
  frost: 'tender',
  chillingSensitive: true,
  sowingDepthCm: 2.5,
  maturity: { fromDays: 70, toDays: 100, countedFrom: 'sowing' }, // from memory
  storageYears: 4,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 12,
  spreadLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 3,
  pickingDays: 14,
  isThinned: false,
  isFed: true,
  viability: [viabilitySet('Demir and others 2011', { ke: 4.86, cw: 1.59, ...COMMON_TERMS })],
  cautions: [
    {
      code: 'cool-and-light',
      text:
        'In soil of 20 °C or less light held the seed of one kind back, so cover it well. In the same study ten ' +
        'days wet at 0 °C did no harm: our cold warning errs on the safe side.',
      source: 'Sachs, on watermelon seed (abstract; author from memory)',
    },
    hotSideUntested(35, 'It did best there, so what heat does to it beyond that is a guess.'),
    {
      code: 'seedless-kinds',
      text: 'Seed of seedless kinds starts poorly. Sow it indoors in warm soil that is moist but never soaked.',
      source:
        'Texas Agricultural Extension Service, on seedless watermelon; how to sow it: common practice, no ' + 'source',
    },
    treatedSeed,
  ],
};
