import { autumnSlows, hotSideUntested, treatedSeed, usualField } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';
import { COMMON_TERMS, viabilitySet } from '../storage/viability-sets.js';

export const pea: CropRecord = {
  id: 'pea',
  name: 'Pea',
  latinName: 'Pisum sativum',
  days: [null, 36, 14, 9, 8, 6, 6, null, null],
  percent: [null, 89, 94, 93, 93, 94, 86, null, null],
  soilF: { minimum: 40, optimumFrom: 40, optimumTo: 75, maximum: 85 },
  frost: 'hardy',
  chillingSensitive: false,
  sowingDepthCm: 3,
  maturity: { fromDays: 55, toDays: 80, countedFrom: 'sowing' }, // UC Napa
  storageYears: 3,
  field: usualField,
  bedTimeFactor: { from: 0.55, to: 0.85 }, // PubMed 40596089; the width assumed
  maxHalfDays: 21,
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 3,
  pickingDays: 14,
  growth: {
    seedlingFrostC: -7,
    leastSoilC: null,
    bedFactor: 0.7,
    patienceFactor: 1.5,
    harvest: {
      by: 'heat',
      baseTempC: 4.4,
      ceilingTempC: 24,
      heatUnitsCDays: 750,
      countedFrom: 'emergence',
      leastPickingDays: 7,
      endFrostC: -2,
      hotHarvestC: 24,
    },
    boltingDayLengthH: null,
  },
  plantingOut: null,
  isThinned: false,
  isFed: false,
  viability: [viabilitySet('Ellis and others 1989', { ke: 9.858, cw: 5.39, ...COMMON_TERMS })],
  cautions: [
    {
      code: 'wet-soil-rot',
      params: {},
      source: 'Short & Lacy 1976 (abstract); Washington State University Extension',
    },
    hotSideUntested(30, 'many', { seedlings: 86, coolerSeedlings: null, coolerC: null }),
    treatedSeed,
    autumnSlows,
  ],
};
