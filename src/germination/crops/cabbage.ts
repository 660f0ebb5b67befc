import { HANDBOOK, hotSideUntested, usualBedTime } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';
import { kinOfCabbage } from '../storage/viability-sets.js';

export const cabbage: CropRecord = {
  id: 'cabbage',
  name: 'Cabbage',
  latinName: 'Brassica oleracea var. capitata',
  days: [null, null, 15, 9, 6, 5, 4, null, null],
  percent: [null, 27, 78, 93, null, 99, null, null, null],
  soilF: { minimum: 40, optimumFrom: 45, optimumTo: 95, maximum: 100 },
  frost: 'hardy',
  chillingSensitive: false,
  sowingDepthCm: 1.3,
  maturity: { fromDays: 60, toDays: 110, countedFrom: 'sowing' }, // UC Napa
  storageYears: 4,
  field: { from: 0.65, to: 0.97 },
  bedTimeFactor: usualBedTime,
  maxHalfDays: 21,
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 5,
  pickingDays: 21,
  growth: {
    seedlingFrostC: -6,
    leastSoilC: null,
    bedFactor: 1,
    patienceFactor: 1.2,
    harvest: {
      by: 'heat',
      baseTempC: 4.4,
      ceilingTempC: 24,
      heatUnitsCDays: 1220,
      countedFrom: 'emergence',
      leastPickingDays: 0,
      endFrostC: -6,
      hotHarvestC: 24,
    },
    boltingDayLengthH: null,
  },
  plantingOut: {
    weeksFromSowing: 6,
    frost: { limitC: -5, days: 30 },
    nights: null,
    leastSoilC: null,
  },
  isThinned: true,
  isFed: true,
  viability: kinOfCabbage,
  cautions: [
    hotSideUntested(30, 'quickest'),
    {
      code: 'cold-side-untimed',
      params: { coldC: 5, belowC: 10 },
      source: HANDBOOK,
    },
    {
      code: 'bolts-after-cold',
      params: { crop: 'cabbage', belowC: 10 },
      source: 'Michigan State University Extension, on early heat and cold; how thick: common practice, no source',
    },
  ],
};
