import {
  afterWarmNights,
  coldWetSoil,
  HANDBOOK,
  slowerElsewhere,
  treatedSeed,
  usualBedTime,
  usualField,
} from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';
import { COMMON_TERMS, viabilitySet } from '../storage/viability-sets.js';

export const cucumber: CropRecord = {
  id: 'cucumber',
  name: 'Cucumber',
  latinName: 'Cucumis sativus',
  days: ['none', 'none', 'none', 13, 6, 4, 3, 3, null],
  percent: [0, 0, 0, 95, 99, 99, 99, 99, 49],
  soilF: { minimum: 60, optimumFrom: 60, optimumTo: 95, maximum: 105 },
  frost: 'tender',
  chillingSensitive: true,
  sowingDepthCm: 2,
  maturity: { fromDays: 60, toDays: 70, countedFrom: 'sowing' }, // UC Napa
  storageYears: 5,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 14,
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 3,
  pickingDays: 28,
  growth: {
    seedlingFrostC: 0,
    leastSoilC: 18.3,
    bedFactor: 1,
    patienceFactor: 1.2,
    harvest: {
      by: 'heat',
      baseTempC: 12,
      ceilingTempC: 32,
      heatUnitsCDays: 440,
      countedFrom: 'emergence',
      leastPickingDays: 14,
      endFrostC: 0,
      hotHarvestC: null,
    },
    boltingDayLengthH: null,
  },
  plantingOut: afterWarmNights(3),
  isThinned: false,
  isFed: true,
  viability: [viabilitySet('Demir and others 2011', { ke: 5.35, cw: 2.03, ...COMMON_TERMS })],
  cautions: [
    {
      code: 'no-cold-soil',
      params: { crop: 'cucumber', coldC: 10, coolC: 15, bestFromC: 25, bestToC: 25 },
      source: HANDBOOK,
    },
    coldWetSoil,
    slowerElsewhere,
    treatedSeed,
  ],
};
