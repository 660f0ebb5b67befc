import { afterWarmNights, hotSideUntested, treatedSeed, usualBedTime, usualField } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';
import { COMMON_TERMS, viabilitySet } from '../storage/viability-sets.js';

export const watermelon: CropRecord = {
  id: 'watermelon',
  name: 'Watermelon',
  latinName: 'Citrullus lanatus',
  days: [null, 'none', null, null, 12, 5, 4, 3, null],
  percent: [null, 0, null, 17, 94, 90, 92, 96, null],
  soilF: { minimum: 60, optimumFrom: 70, optimumTo: 95, maximum: 105 },
  frost: 'tender',
  chillingSensitive: true,
  sowingDepthCm: 2.5,
  maturity: { fromDays: 70, toDays: 100, countedFrom: 'sowing' }, // from memory
  storageYears: 4,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 12,
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 3,
  pickingDays: 14,
  growth: {
    seedlingFrostC: 0,
    leastSoilC: 18.3,
    bedFactor: 1,
    patienceFactor: 1.2,
    harvest: {
      by: 'heat',
      baseTempC: 12,
      ceilingTempC: 32,
      heatUnitsCDays: 740,
      countedFrom: 'emergence',
      leastPickingDays: 14,
      endFrostC: 0,
      hotHarvestC: null,
    },
    boltingDayLengthH: null,
  },
  plantingOut: afterWarmNights(3),
  isThinned: false,
  isFed: true,
  viability: [viabilitySet('Demir and others 2011', { ke: 4.86, cw: 1.59, ...COMMON_TERMS })],
  cautions: [
    {
      code: 'cool-and-light',
      params: { coolC: 20, coldC: 0 },
      source: 'Sachs, on watermelon seed (abstract; author from memory)',
    },
    hotSideUntested(35, 'best'),
    {
      code: 'seedless-kinds',
      params: {},
      source:
        'Texas Agricultural Extension Service, on seedless watermelon; how to sow it: common practice, no ' + 'source',
    },
    treatedSeed,
  ],
};
