import { COMMON, HANDBOOK, usualBedTime, usualField } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';
import { viabilitySet } from '../storage/viability-sets.js';

export const tomato: CropRecord = {
  id: 'tomato',
  name: 'Tomato',
  latinName: 'Solanum lycopersicum',
  days: ['none', 'none', 43, 14, 8, 6, 6, 9, 'none'],
  percent: [0, 0, 82, 98, 98, 97, 83, 46, 0],
  soilF: { minimum: 50, optimumFrom: 60, optimumTo: 85, maximum: 95 },
  frost: 'tender',
  chillingSensitive: false,
  sowingDepthCm: 1,
  maturity: { fromDays: 55, toDays: 85, countedFrom: 'planting-out' }, // from memory
  storageYears: 4,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 16,
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 5,
  pickingDays: 42,
  growth: {
    seedlingFrostC: 0,
    leastSoilC: 15.6,
    bedFactor: 1,
    patienceFactor: 1.2,
    harvest: {
      // days counted at 21 °C: assumed, as is the heat it needs
      by: 'heat',
      baseTempC: 10,
      ceilingTempC: 30,
      heatUnitsCDays: 805,
      countedFrom: 'planting-out',
      leastPickingDays: 21,
      endFrostC: 0,
      hotHarvestC: null,
    },
    boltingDayLengthH: null,
  },
  plantingOut: {
    weeksFromSowing: 6,
    frost: { limitC: 0, days: 45 },
    nights: { by: 'mean', fairC: 10, goodC: 10 },
    leastSoilC: 15.6,
  },
  isThinned: false,
  isFed: true,
  viability: [viabilitySet('Kruse and others 2005', { ke: 6.5017, cw: 3.1807, ch: 0.0324, cq: 0.000431 })],
  cautions: [
    {
      code: 'wants-warmth',
      params: { crop: 'tomato', bestFromC: 25, bestToC: 30, coolC: 15, coldC: 10, nothingC: 5 },
      source: `${HANDBOOK}; sowing indoors: ${COMMON}`,
    },
    {
      code: 'heat-thins',
      params: { crop: 'tomato', goodC: 30, hotC: 35 },
      source: HANDBOOK,
    },
  ],
};
