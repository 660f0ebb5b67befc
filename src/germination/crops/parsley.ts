import { burningSap, lookAlikes, shortLivedSeed, usualBedTime, usualField } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';

export const parsley: CropRecord = {
  id: 'parsley',
  name: 'Parsley',
  latinName: 'Petroselinum crispum',
  days: [null, null, 29, 17, 14, 13, 12, null, null],
  percent: [null, null, 63, null, 69, 64, 50, null, null],
  soilF: { minimum: 40, optimumFrom: 50, optimumTo: 85, maximum: 90 },
  frost: 'hardy',
  chillingSensitive: false,
  sowingDepthCm: 1,
  maturity: { fromDays: 70, toDays: 85, countedFrom: 'sowing' }, // UC Napa
  storageYears: 1,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 24,
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 6,
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
      heatUnitsCDays: 855,
      countedFrom: 'emergence',
      leastPickingDays: 21,
      endFrostC: -6,
      hotHarvestC: null,
    },
    boltingDayLengthH: null,
  },
  plantingOut: null,
  isThinned: true,
  isFed: true,
  viability: [],
  cautions: [
    {
      code: 'slow',
      params: { about: 'crop', crop: 'parsley', warmC: null, mildC: null, coolC: null },
      source: 'Podlaski, Chrobak & Wyszkowska, on treated parsley seed in the field (summary)',
    },
    {
      code: 'soak',
      params: {},
      source: 'Dursun & Ekinci 2010 (abstract)',
    },
    shortLivedSeed,
    burningSap,
    lookAlikes,
  ],
};
