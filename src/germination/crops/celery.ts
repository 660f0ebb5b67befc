import { slowerElsewhere, usualBedTime, usualField, weakLot } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';

export const celery: CropRecord = {
  id: 'celery',
  name: 'Celery',
  latinName: 'Apium graveolens',
  days: ['none', 41, 16, 12, 7, 'none', 'none', 'none', null],
  percent: [0, 72, 70, 40, 97, 65, 0, 0, null],
  soilF: { minimum: 40, optimumFrom: 60, optimumTo: 70, maximum: 85 },
  frost: 'half-hardy',
  chillingSensitive: false,
  sowingDepthCm: 0.3,
  maturity: { fromDays: 85, toDays: 120, countedFrom: 'planting-out' }, // from memory
  storageYears: 3,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 13,
  spreadLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 8,
  pickingDays: 28,
  isThinned: true,
  isFed: true,
  viability: [],
  cautions: [
    {
      code: 'needs-light',
      text:
        'The seed needs light to sprout, though cool nights after warm days can stand in for it. Press it in ' +
        'and barely cover it, and never let it dry.',
      source: 'Pressman, Negbi, Sachs & Jacobsen 1977 (abstract); how to sow it: common practice, no source',
    },
    {
      code: 'hates-heat',
      text:
        'Steady warmth stops it: best at 10 to 15 °C, or with days of 22 to 25 °C and nights of 12 to 15 °C. ' +
        'The chart contradicts itself at 25 °C, so we count that as too hot.',
      source: 'study of five kinds over 0 to 40 °C (Thompson 1974, abstract; author and year from memory)',
    },
    weakLot('40 seedlings from a hundred seeds at 15 °C, between 70 at 10 °C and 97 at 20 °C.'),
    slowerElsewhere,
    {
      code: 'bolts-after-cold',
      text:
        'Cold on young plants sends them to seed; warmth while they are raised held that back. Keep them from ten ' +
        'days or more of nights under about 10 °C.',
      source: 'Sachs & Rylski 1980 (abstract); ten days and 10 °C: common practice, no source',
    },
  ],
};
