import { autumnSlows, HANDBOOK, hotSideUntested, usualBedTime } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';

export const radish: CropRecord = {
  id: 'radish',
  name: 'Radish',
  latinName: 'Raphanus sativus',
  days: ['none', 29, 11, 6, 4, 4, 3, null, null],
  percent: [0, 42, 76, 97, 95, 97, 95, null, null],
  soilF: { minimum: 40, optimumFrom: 45, optimumTo: 90, maximum: 95 },
  frost: 'hardy',
  chillingSensitive: false,
  sowingDepthCm: 1.3,
  maturity: { fromDays: 25, toDays: 50, countedFrom: 'sowing' }, // 1918
  storageYears: 5,
  field: { from: 0.67, to: 0.96 },
  bedTimeFactor: usualBedTime,
  maxHalfDays: 20,
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: null,
  pickingDays: 10,
  growth: {
    seedlingFrostC: -5,
    leastSoilC: null,
    bedFactor: 1,
    patienceFactor: 1.2,
    harvest: {
      by: 'heat',
      baseTempC: 4.4,
      ceilingTempC: 24,
      heatUnitsCDays: 360,
      countedFrom: 'emergence',
      leastPickingDays: 0,
      endFrostC: -4,
      hotHarvestC: 24,
    },
    boltingDayLengthH: null,
  },
  plantingOut: null,
  isThinned: true,
  isFed: false,
  viability: [],
  cautions: [
    hotSideUntested(30, 'quickest'),
    {
      code: 'cold-thins',
      params: { coldC: 5, coolC: 10, mildC: 15 },
      source: HANDBOOK,
    },
    autumnSlows,
  ],
};
