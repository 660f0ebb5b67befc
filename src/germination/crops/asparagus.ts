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
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 10,
  pickingDays: null,
  growth: {
    seedlingFrostC: -2, // assumed
    leastSoilC: null,
    bedFactor: 1,
    patienceFactor: 1.2,
    harvest: null,
    boltingDayLengthH: null,
  },
  plantingOut: null,
  isThinned: true,
  isFed: true,
  viability: [],
  cautions: [
    {
      code: 'slow',
      params: { about: 'crop', crop: 'asparagus', warmC: 25, mildC: 15, coolC: 10 },
      source: HANDBOOK,
    },
    {
      code: 'years-to-harvest',
      params: {},
      source: COMMON,
    },
    {
      code: 'frost-on-shoots',
      params: {},
      source: COMMON,
    },
    {
      code: 'no-sound-seedlings-hot',
      params: { hotC: 40 },
      source: HANDBOOK,
    },
  ],
};
