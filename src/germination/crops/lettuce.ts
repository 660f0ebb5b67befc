import { autumnSlows, BEDS, HANDBOOK } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';
import { COMMON_TERMS, viabilitySet } from '../storage/viability-sets.js';

export const lettuce: CropRecord = {
  id: 'lettuce',
  name: 'Lettuce',
  latinName: 'Lactuca sativa',
  days: [49, 15, 7, 4, 3, 2, 3, 'none', 'none'],
  percent: [98, 98, 98, 99, 99, 99, 12, 0, 0],
  soilF: { minimum: 35, optimumFrom: 40, optimumTo: 80, maximum: 85 },
  frost: 'half-hardy',
  chillingSensitive: false,
  sowingDepthCm: 0.6,
  maturity: { fromDays: 40, toDays: 55, countedFrom: 'sowing' }, // leaf kinds: several extension services
  storageYears: 6,
  field: { from: 0.2, to: 0.67 },
  bedTimeFactor: { from: 1, to: 1.4 },
  maxHalfDays: 20,
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 3,
  pickingDays: 14,
  growth: {
    seedlingFrostC: -6,
    leastSoilC: null,
    bedFactor: 1,
    patienceFactor: 1.2,
    harvest: {
      by: 'heat',
      baseTempC: 4.4,
      ceilingTempC: 24,
      heatUnitsCDays: 615,
      countedFrom: 'emergence',
      leastPickingDays: 7,
      endFrostC: -5,
      hotHarvestC: 24,
    },
    boltingDayLengthH: null,
  },
  plantingOut: {
    weeksFromSowing: 5,
    frost: { limitC: -4, days: 30 },
    nights: null,
    leastSoilC: null,
  },
  isThinned: true,
  isFed: true,
  viability: [
    viabilitySet('Ellis and others 1989', { ke: 7.938, cw: 5.25, ...COMMON_TERMS }),
    viabilitySet('Kraak, Vos 1987, with the terms of Dickie and others 1990', { ke: 6.895, cw: 4.2, ...COMMON_TERMS }),
  ],
  cautions: [
    {
      code: 'stopped-by-heat',
      params: { goodC: 25, hotC: 30, limitFromC: 25.7, limitToC: 32.8 },
      source: `${HANDBOOK}; limits: Gray 1975 (abstract)`,
    },
    {
      code: 'sleeps-after-heat',
      params: {},
      source: 'University of Arizona, on lettuce; Gray 1975 (abstract); remedies common practice, no source',
    },
    {
      code: 'some-need-light',
      params: { hotC: 35 },
      source: 'Borthwick, Hendricks, Toole & Toole 1954 (abstract; authors and year from memory)',
    },
    {
      code: 'beds-differ',
      params: { fromSeedlings: 20, toSeedlings: 67, crop: 'lettuce' },
      source: BEDS,
    },
    {
      code: 'bolts-in-heat-and-long-days',
      params: {},
      source:
        'Iowa State University Extension 1994, on lettuce; Sukprakarn 1985 (abstract); remedies common practice, ' +
        'no source',
    },
    autumnSlows,
  ],
};
