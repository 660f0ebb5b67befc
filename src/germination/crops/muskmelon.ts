import {
  afterWarmNights,
  coldWetSoil,
  HANDBOOK,
  hotSideUntested,
  treatedSeed,
  usualBedTime,
  usualField,
} from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';
import { viabilitySet } from '../storage/viability-sets.js';

export const muskmelon: CropRecord = {
  id: 'muskmelon',
  name: 'Muskmelon',
  latinName: 'Cucumis melo',
  days: [null, null, null, null, 8, 4, 3, null, null],
  percent: [null, null, null, null, 38, 94, 90, null, null],
  soilF: { minimum: 60, optimumFrom: 75, optimumTo: 95, maximum: 100 },
  frost: 'tender',
  chillingSensitive: true,
  sowingDepthCm: 2,
  maturity: { fromDays: 83, toDays: 90, countedFrom: 'sowing' }, // UC Napa
  storageYears: 5,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 12,
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 3,
  pickingDays: 14,
  growth: {
    seedlingFrostC: 0,
    leastSoilC: 18.3,
    bedFactor: 1,
    patienceFactor: 1.2,
    harvest: {
      by: 'heat',
      baseTempC: 12,
      ceilingTempC: 32,
      heatUnitsCDays: 730,
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
  viability: [viabilitySet('Kuo 1991', { ke: 7.299, cw: 3.707, ch: 0.0367, cq: 0.000473 })],
  cautions: [
    {
      code: 'cold-side-untested',
      params: { crop: 'muskmelon', belowC: 20 },
      source: HANDBOOK,
    },
    hotSideUntested(30, 'quickest'),
    coldWetSoil,
    treatedSeed,
  ],
};
