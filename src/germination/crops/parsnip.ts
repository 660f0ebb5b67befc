import { COMMON, HANDBOOK, shortLivedSeed, usualBedTime, usualField } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';

export const parsnip: CropRecord = {
  id: 'parsnip',
  name: 'Parsnip',
  latinName: 'Pastinaca sativa',
  days: [172, 57, 27, 19, 14, 15, 32, 'none', 'none'],
  percent: [82, 87, 79, 85, 89, 77, 51, 1, 0],
  soilF: { minimum: 35, optimumFrom: 50, optimumTo: 70, maximum: 85 },
  frost: 'hardy',
  chillingSensitive: false,
  sowingDepthCm: 1.3,
  maturity: { fromDays: 100, toDays: 130, countedFrom: 'sowing' }, // from memory
  storageYears: 1,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 28,
  spreadLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: null,
  pickingDays: 56,
  isThinned: true,
  isFed: false,
  viability: [],
  cautions: [
    shortLivedSeed,
    {
      code: 'slow',
      text:
        'Even at its best half was up only after 14 days, and at 10 °C after 27. Keep the row moist and mark ' +
        'it, for example with a few radishes.',
      source: `${HANDBOOK}; the radishes: ${COMMON}`,
    },
    {
      code: 'cool-soil',
      text: 'It likes cool soil: 89 seedlings from a hundred seeds at 20 °C, 51 at 30 °C, 1 at 35 °C.',
      source: HANDBOOK,
    },
  ],
};
