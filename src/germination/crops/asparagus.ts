import { COMMON, HANDBOOK, usualBedTime, usualField } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';

export const asparagus: CropRecord = {
  id: 'asparagus',
  name: 'Asparagus',
  latinName: 'Asparagus officinalis',
  days: ['none', 'none', 53, 24, 15, 10, 12, 20, 28],
  percent: [0, 0, 61, 80, 88, 95, 79, 37, 0],
  soilF: { minimum: 50, optimumFrom: 60, optimumTo: 85, maximum: 95 },
  frost: 'hardy',
  chillingSensitive: false,
  sowingDepthCm: 2.5,
  maturity: null, // the first cutting is years away
  storageYears: 3,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 21,
  spreadLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 10,
  pickingDays: null,
  isThinned: true,
  isFed: true,
  viability: [],
  cautions: [
    {
      code: 'slow',
      text:
        'Slow seed: half was up in 10 days at 25 °C, in 24 at 15 °C and in 53 at 10 °C. Keep the row moist and ' +
        'leave it undisturbed.',
      source: HANDBOOK,
    },
    {
      code: 'years-to-harvest',
      text: 'Plants grown from seed are left uncut for about two years, so no harvest date is given here.',
      source: COMMON,
    },
    {
      code: 'frost-on-shoots',
      text: 'The roots live through winter, but a frost kills the young shoots that stand above ground.',
      source: COMMON,
    },
    {
      code: 'no-sound-seedlings-hot',
      text:
        'At 40 °C some seed came up after 28 days, but no seedling was sound. Do not read those days as a ' +
        'reason to sow.',
      source: HANDBOOK,
    },
  ],
};
