import { coldWetSoil, HANDBOOK, treatedSeed, usualField } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';

export const limaBean: CropRecord = {
  id: 'lima-bean',
  name: 'Lima bean',
  latinName: 'Phaseolus lunatus',
  days: [null, null, 'none', 31, 18, 7, 7, 'none', null],
  percent: [null, null, 1, 52, 82, 90, 88, 2, null],
  soilF: { minimum: 60, optimumFrom: 60, optimumTo: 85, maximum: 85 },
  frost: 'tender',
  chillingSensitive: true,
  sowingDepthCm: 4,
  maturity: { fromDays: 65, toDays: 90, countedFrom: 'sowing' }, // from memory
  storageYears: 3,
  field: usualField,
  bedTimeFactor: { from: 0.45, to: 0.75 }, // as snap bean: assumed
  maxHalfDays: 21,
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 3,
  pickingDays: 14,
  growth: {
    seedlingFrostC: 0,
    leastSoilC: 15.6,
    bedFactor: 0.6,
    patienceFactor: 1.2,
    harvest: {
      by: 'heat',
      baseTempC: 10,
      ceilingTempC: 29,
      heatUnitsCDays: 735,
      countedFrom: 'emergence',
      leastPickingDays: 14,
      endFrostC: 0,
      hotHarvestC: 27,
    },
    boltingDayLengthH: null,
  },
  plantingOut: null,
  isThinned: false,
  isFed: false,
  viability: [],
  cautions: [
    {
      code: 'cold-first-day',
      params: { crop: 'lima-bean', waitForC: 15, belowC: null, sugaryFromC: null, sugaryToC: null },
      source:
        'Pollock & Toole, on lima bean (abstract; 1966 from memory); 15 °C: Ontario Ministry of Agriculture, ' +
        'Food and Rural Affairs 2011',
    },
    coldWetSoil,
    {
      code: 'heat-thins',
      params: { crop: 'lima-bean', goodC: 30, hotC: 35 },
      source: HANDBOOK,
    },
    treatedSeed,
  ],
};
