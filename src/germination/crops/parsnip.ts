import { burningSap, COMMON, HANDBOOK, lookAlikes, shortLivedSeed, usualBedTime, usualField } from '../crop-parts.js';
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
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: null,
  pickingDays: 56,
  growth: {
    seedlingFrostC: -6,
    leastSoilC: null,
    bedFactor: 1,
    patienceFactor: 1.2,
    harvest: {
      by: 'heat',
      baseTempC: 4.4,
      ceilingTempC: 24,
      heatUnitsCDays: 1050,
      countedFrom: 'emergence',
      leastPickingDays: 0,
      endFrostC: null,
      hotHarvestC: null,
    },
    boltingDayLengthH: null,
  },
  plantingOut: null,
  isThinned: true,
  isFed: false,
  viability: [],
  cautions: [
    shortLivedSeed,
    {
      code: 'slow',
      params: { about: 'crop', crop: 'parsnip', warmC: null, mildC: null, coolC: 10 },
      source: `${HANDBOOK}; the radishes: ${COMMON}`,
    },
    {
      code: 'cool-soil',
      params: { goodC: 20, warmC: 30, hotC: 35 },
      source: HANDBOOK,
    },
    burningSap,
    lookAlikes,
  ],
};
