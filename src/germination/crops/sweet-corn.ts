import { coldWetSoil, treatedSeed, usualBedTime, usualField } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';
import { viabilitySet } from '../storage/viability-sets.js';

export const sweetCorn: CropRecord = {
  id: 'sweet-corn',
  name: 'Sweet corn',
  latinName: 'Zea mays',
  days: ['none', 'none', 22, 12, 7, 4, 4, 3, 'none'],
  percent: [0, 0, 47, 97, 97, 98, 91, 88, 10],
  soilF: { minimum: 50, optimumFrom: 60, optimumTo: 95, maximum: 105 },
  frost: 'tender',
  chillingSensitive: true,
  sowingDepthCm: 3,
  maturity: { fromDays: 70, toDays: 110, countedFrom: 'sowing' }, // UC Napa
  storageYears: 2,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 13,
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 3,
  pickingDays: 10,
  growth: {
    seedlingFrostC: 0,
    leastSoilC: 15.6,
    bedFactor: 1,
    patienceFactor: 1,
    harvest: {
      by: 'heat',
      baseTempC: 10,
      ceilingTempC: 30,
      heatUnitsCDays: 755,
      countedFrom: 'emergence',
      leastPickingDays: 7,
      endFrostC: 0,
      hotHarvestC: null,
    },
    boltingDayLengthH: null,
  },
  plantingOut: null,
  isThinned: false,
  isFed: true,
  viability: [viabilitySet('Ellis, Hong 2007', { ke: 9.993, cw: 5.993, ch: 0.0322, cq: 0.000454 }, 'maize')],
  cautions: [
    {
      code: 'cold-first-day',
      params: { crop: 'sweet-corn', waitForC: 13, belowC: 10, sugaryFromC: 16, sugaryToC: 18 },
      source:
        'Purdue University Extension, on maize (newspaper report, 2020); soil temperatures: Ontario Ministry of ' +
        'Agriculture, Food and Rural Affairs 2011',
    },
    coldWetSoil,
    treatedSeed,
  ],
};
