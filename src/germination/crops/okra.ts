import { HANDBOOK, treatedSeed, usualBedTime, usualField } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';
import { COMMON_TERMS, viabilitySet } from '../storage/viability-sets.js';

export const okra: CropRecord = {
  id: 'okra',
  name: 'Okra',
  latinName: 'Abelmoschus esculentus',
  days: ['none', 'none', 'none', 27, 17, 13, 7, 6, 7],
  percent: [0, 0, 0, 74, 89, 92, 88, 85, 35],
  soilF: { minimum: 60, optimumFrom: 70, optimumTo: 95, maximum: 105 },
  frost: 'tender',
  chillingSensitive: true,
  sowingDepthCm: 2,
  maturity: { fromDays: 50, toDays: 65, countedFrom: 'sowing' }, // from memory
  storageYears: 2,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 19,
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 4,
  pickingDays: 42,
  growth: {
    seedlingFrostC: 0,
    leastSoilC: 18.3,
    bedFactor: 1,
    patienceFactor: 1.2,
    harvest: {
      by: 'heat',
      baseTempC: 15,
      ceilingTempC: 32,
      heatUnitsCDays: 390,
      countedFrom: 'emergence',
      leastPickingDays: 21,
      endFrostC: 0,
      hotHarvestC: null,
    },
    boltingDayLengthH: null,
  },
  plantingOut: null,
  isThinned: false,
  isFed: true,
  viability: [viabilitySet('Daniel and others 2013', { ke: 6.659, cw: 2.448, ...COMMON_TERMS })],
  cautions: [
    {
      code: 'hard-seed',
      params: {},
      source: 'Begum & Ayub, on okra seed harvest (abstract); soaking: common practice, no source',
    },
    {
      code: 'no-cold-soil',
      params: { crop: 'okra', coldC: 10, coolC: 15, bestFromC: 30, bestToC: 35 },
      source: HANDBOOK,
    },
    treatedSeed,
  ],
};
