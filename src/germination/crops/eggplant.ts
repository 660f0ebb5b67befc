import {
  afterWarmNights,
  COMMON,
  HANDBOOK,
  hotSideUntested,
  usualBedTime,
  usualField,
  weakLot,
} from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';

export const eggplant: CropRecord = {
  id: 'eggplant',
  name: 'Eggplant',
  latinName: 'Solanum melongena',
  days: [null, null, null, null, 13, 8, 5, null, null],
  percent: [null, null, null, null, 21, 53, 60, null, null],
  soilF: { minimum: 60, optimumFrom: 75, optimumTo: 90, maximum: 95 },
  frost: 'tender',
  chillingSensitive: false,
  sowingDepthCm: 1,
  maturity: { fromDays: 70, toDays: 85, countedFrom: 'planting-out' }, // UC Napa
  storageYears: 4,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 12,
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 6,
  pickingDays: 56,
  growth: {
    seedlingFrostC: 0,
    leastSoilC: 18.3,
    bedFactor: 1,
    patienceFactor: 1.2,
    harvest: {
      // days counted at 21 °C: assumed, as is the heat it needs
      by: 'heat',
      baseTempC: 10,
      ceilingTempC: 30,
      heatUnitsCDays: 870,
      countedFrom: 'planting-out',
      leastPickingDays: 21,
      endFrostC: 0,
      hotHarvestC: null,
    },
    boltingDayLengthH: null,
  },
  plantingOut: afterWarmNights(8),
  isThinned: false,
  isFed: true,
  viability: [],
  cautions: [
    weakLot({ crop: 'eggplant', atC: 20, coolerC: null, warmerC: null }),
    {
      code: 'cold-side-untested',
      params: { crop: 'eggplant', belowC: 20 },
      source: `${HANDBOOK}; sowing indoors: ${COMMON}`,
    },
    hotSideUntested(30, 'best'),
  ],
};
