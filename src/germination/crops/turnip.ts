import { autumnSlows, HANDBOOK, slowerElsewhere, usualBedTime, usualField } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';
import { kinOfCabbage } from '../storage/viability-sets.js';

export const turnip: CropRecord = {
  id: 'turnip',
  name: 'Turnip',
  latinName: 'Brassica rapa subsp. rapa',
  days: ['none', 'none', 5, 3, 2, 1, 1, 1, 3],
  percent: [1, 14, 79, 98, 99, 100, 99, 99, 88],
  soilF: { minimum: 40, optimumFrom: 60, optimumTo: 105, maximum: 105 },
  frost: 'hardy',
  chillingSensitive: false,
  sowingDepthCm: 1.3,
  maturity: { fromDays: 35, toDays: 60, countedFrom: 'sowing' }, // from memory
  storageYears: 4,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 12,
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: null,
  pickingDays: 14,
  growth: {
    seedlingFrostC: -6,
    leastSoilC: null,
    bedFactor: 1,
    patienceFactor: 1.5,
    harvest: {
      by: 'heat',
      baseTempC: 4.4,
      ceilingTempC: 24,
      heatUnitsCDays: 665,
      countedFrom: 'emergence',
      leastPickingDays: 0,
      endFrostC: -6,
      hotHarvestC: 24,
    },
    boltingDayLengthH: null,
  },
  plantingOut: null,
  isThinned: true,
  isFed: false,
  viability: kinOfCabbage,
  cautions: [
    {
      code: 'whole-days',
      params: {},
      source: HANDBOOK,
    },
    slowerElsewhere,
    autumnSlows,
    {
      code: 'bolts-after-cold',
      params: { crop: 'turnip', belowC: 10 },
      source: 'Michigan State University Extension, on early heat and cold',
    },
  ],
};
