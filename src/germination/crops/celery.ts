import { burningSap, lookAlikes, slowerElsewhere, usualBedTime, usualField, weakLot } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';

export const celery: CropRecord = {
  id: 'celery',
  name: 'Celery',
  latinName: 'Apium graveolens',
  days: ['none', 41, 16, 12, 7, 'none', 'none', 'none', null],
  percent: [0, 72, 70, 40, 97, 65, 0, 0, null],
  soilF: { minimum: 40, optimumFrom: 60, optimumTo: 70, maximum: 85 },
  frost: 'half-hardy',
  chillingSensitive: false,
  sowingDepthCm: 0.3,
  maturity: { fromDays: 85, toDays: 120, countedFrom: 'planting-out' }, // from memory
  storageYears: 3,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 13,
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 8,
  pickingDays: 28,
  growth: {
    seedlingFrostC: -1,
    leastSoilC: null,
    bedFactor: 1,
    patienceFactor: 1.2,
    harvest: {
      // days counted at 18 °C: assumed; heat: Knott's Handbook
      by: 'heat',
      baseTempC: 4.4,
      ceilingTempC: 24,
      heatUnitsCDays: 1440,
      countedFrom: 'planting-out',
      leastPickingDays: 0,
      endFrostC: -2,
      hotHarvestC: 24,
    },
    boltingDayLengthH: null,
  },
  plantingOut: {
    weeksFromSowing: 11,
    frost: { limitC: -1, days: 30 },
    nights: { by: 'count', belowC: 10, mostNights: 10, days: 30 },
    leastSoilC: null,
  },
  isThinned: true,
  isFed: true,
  viability: [],
  cautions: [
    {
      code: 'needs-light',
      params: {},
      source: 'Pressman, Negbi, Sachs & Jacobsen 1977 (abstract); how to sow it: common practice, no source',
    },
    {
      code: 'hates-heat',
      params: { bestFromC: 10, bestToC: 15, dayFromC: 22, dayToC: 25, nightFromC: 12, nightToC: 15, contraryC: 25 },
      source: 'study of five kinds over 0 to 40 °C (Thompson 1974, abstract; author and year from memory)',
    },
    weakLot({ crop: 'celery', atC: 15, coolerC: 10, warmerC: 20 }),
    slowerElsewhere,
    {
      code: 'bolts-after-cold',
      params: { crop: 'celery', belowC: 10 },
      source: 'Sachs & Rylski 1980 (abstract); ten days and 10 °C: common practice, no source',
    },
    burningSap,
    lookAlikes,
  ],
};
