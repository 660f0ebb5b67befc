import { autumnSlows, coldWetSoil, HANDBOOK, treatedSeed, usualField } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';
import { COMMON_TERMS, viabilitySet } from '../storage/viability-sets.js';

export const snapBean: CropRecord = {
  id: 'snap-bean',
  name: 'Snap bean',
  latinName: 'Phaseolus vulgaris',
  days: ['none', 'none', 'none', 16, 11, 8, 6, 6, 'none'],
  percent: [0, 0, 1, 97, 90, 97, 47, 39, 0],
  soilF: { minimum: 60, optimumFrom: 60, optimumTo: 85, maximum: 95 },
  frost: 'tender',
  chillingSensitive: true,
  sowingDepthCm: 3,
  maturity: { fromDays: 50, toDays: 80, countedFrom: 'sowing' }, // UC Napa
  storageYears: 3,
  field: usualField,
  bedTimeFactor: { from: 0.45, to: 0.75 }, // Oregon Vegetable Digest, July 1969
  maxHalfDays: 18,
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 3,
  pickingDays: 14,
  growth: {
    seedlingFrostC: 0,
    leastSoilC: 15.6,
    bedFactor: 0.6,
    patienceFactor: 1.2,
    harvest: {
      by: 'heat',
      baseTempC: 10,
      ceilingTempC: 29,
      heatUnitsCDays: 495,
      countedFrom: 'emergence',
      leastPickingDays: 14,
      endFrostC: 0,
      hotHarvestC: 27,
    },
    boltingDayLengthH: null,
  },
  plantingOut: null,
  isThinned: false,
  isFed: false,
  viability: [viabilitySet('Ellis and others 1990', { ke: 9.09, cw: 4.761, ...COMMON_TERMS })],
  cautions: [
    {
      code: 'cold-first-day',
      params: { crop: 'snap-bean', waitForC: 13, belowC: null, sugaryFromC: null, sugaryToC: null },
      source: 'Wolk and others 1989 (abstract); 13 °C: Ontario Ministry of Agriculture, Food and Rural Affairs 2011',
    },
    coldWetSoil,
    {
      code: 'heat-thins',
      params: { crop: 'snap-bean', goodC: 25, hotC: 30 },
      source: HANDBOOK,
    },
    treatedSeed,
    autumnSlows,
  ],
};
