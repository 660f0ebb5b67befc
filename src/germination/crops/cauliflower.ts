import { hotSideUntested, usualBedTime, usualField, weakLot } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';
import { kinOfCabbage } from '../storage/viability-sets.js';

export const cauliflower: CropRecord = {
  id: 'cauliflower',
  name: 'Cauliflower',
  latinName: 'Brassica oleracea var. botrytis',
  days: [null, null, 20, 10, 6, 5, 5, null, null],
  percent: [null, null, 58, 60, null, 63, 45, null, null],
  soilF: { minimum: 40, optimumFrom: 45, optimumTo: 85, maximum: 100 },
  frost: 'half-hardy',
  chillingSensitive: false,
  sowingDepthCm: 1.3,
  maturity: { fromDays: 50, toDays: 85, countedFrom: 'planting-out' }, // from memory
  storageYears: 4,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 21,
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 5,
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
      heatUnitsCDays: 1285,
      countedFrom: 'emergence',
      leastPickingDays: 0,
      endFrostC: -3,
      hotHarvestC: 24,
    },
    boltingDayLengthH: null,
  },
  plantingOut: {
    weeksFromSowing: 6,
    frost: { limitC: -4, days: 30 },
    nights: null,
    leastSoilC: null,
  },
  isThinned: true,
  isFed: true,
  viability: kinOfCabbage,
  cautions: [
    weakLot({ crop: 'cauliflower', atC: 25, coolerC: null, warmerC: null }),
    hotSideUntested(30, 'fewer', { seedlings: 45, coolerSeedlings: 63, coolerC: 25 }),
  ],
};
