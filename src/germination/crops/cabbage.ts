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
  ],
};
