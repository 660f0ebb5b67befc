import { afterWarmNights, COMMON, HANDBOOK, usualBedTime, usualField } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';
import { COMMON_TERMS, viabilitySet } from '../storage/viability-sets.js';

export const pepper: CropRecord = {
  id: 'pepper',
  name: 'Pepper',
  latinName: 'Capsicum annuum',
  days: ['none', 'none', 'none', 25, 13, 8, 8, 9, 'none'],
  percent: [0, 0, 1, 70, 96, 98, 95, 70, 0],
  soilF: { minimum: 60, optimumFrom: 65, optimumTo: 95, maximum: 95 },
  frost: 'tender',
  chillingSensitive: false,
  sowingDepthCm: 1,
  maturity: { fromDays: 60, toDays: 85, countedFrom: 'planting-out' }, // UC Napa
  storageYears: 2,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 19,
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
      heatUnitsCDays: 825,
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
  viability: [viabilitySet('Demir and others 2009', { ke: 7.767, cw: 4.67, ...COMMON_TERMS })],
  cautions: [
    {
      code: 'wants-warmth',
      params: { crop: 'pepper', bestFromC: 25, bestToC: 30, coolC: 15, coldC: 10, nothingC: null },
      source: `${HANDBOOK}; sowing indoors: ${COMMON}`,
    },
  ],
};
