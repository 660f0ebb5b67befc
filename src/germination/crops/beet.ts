import { autumnSlows, treatedSeed, usualBedTime, usualField } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';
import { viabilitySet } from '../storage/viability-sets.js';

export const beet: CropRecord = {
  id: 'beet',
  name: 'Beet',
  latinName: 'Beta vulgaris',
  days: [null, 42, 17, 10, 6, 5, 5, 5, null],
  percent: [null, 53, 72, 88, 90, 97, 89, 35, null],
  soilF: { minimum: 40, optimumFrom: 50, optimumTo: 85, maximum: 95 },
  frost: 'half-hardy',
  chillingSensitive: false,
  sowingDepthCm: 1.5,
  maturity: { fromDays: 50, toDays: 80, countedFrom: 'sowing' }, // UC Napa
  storageYears: 4,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 20,
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 3,
  pickingDays: 14,
  growth: {
    seedlingFrostC: -4,
    leastSoilC: null,
    bedFactor: 1,
    patienceFactor: 1.2,
    harvest: {
      by: 'heat',
      baseTempC: 4.4,
      ceilingTempC: 24,
      heatUnitsCDays: 840,
      countedFrom: 'emergence',
      leastPickingDays: 0,
      endFrostC: -6,
      hotHarvestC: 25,
    },
    boltingDayLengthH: null,
  },
  plantingOut: null,
  isThinned: true,
  isFed: true,
  viability: [viabilitySet('Ellis, Hong 2007', { ke: 8.988, cw: 4.969, ch: 0.0322, cq: 0.000454 }, 'beet')],
  cautions: [
    {
      code: 'seed-cluster',
      params: {},
      source: 'Chicago Botanic Garden, on growing beets; single-seeded kinds are sold too (from memory)',
    },
    {
      code: 'crust',
      params: { crop: 'beet' },
      source: 'Chicago Botanic Garden, on growing beets; the remedy common practice, no source',
    },
    treatedSeed,
    {
      code: 'bolts-after-cold',
      params: { crop: 'beet', belowC: 7 },
      source: 'Cornell University, home gardening guide to beets; the advice common practice, no source',
    },
    autumnSlows,
  ],
};
