import { autumnSlows, HANDBOOK, shortLivedSeed, slowInBeds } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';
import { onion } from './onion.js';

/** Not in the handbook's table: onion's rows stand in. */
export const bunchingOnion: CropRecord = {
  ...onion,
  id: 'bunching-onion',
  name: 'Bunching onion',
  latinName: 'Allium fistulosum',
  maturity: { fromDays: 60, toDays: 70, countedFrom: 'sowing' }, // several extension services, as green onion
  weeksInTrays: 8,
  pickingDays: 21,
  growth: {
    seedlingFrostC: -6,
    leastSoilC: null,
    bedFactor: 1,
    patienceFactor: 1.5,
    harvest: {
      by: 'heat',
      baseTempC: 6,
      ceilingTempC: 24,
      heatUnitsCDays: 855,
      countedFrom: 'emergence',
      leastPickingDays: 0,
      endFrostC: -6,
      hotHarvestC: null,
    },
    boltingDayLengthH: null,
  },
  plantingOut: null,
  isThinned: false,
  isFed: true,
  viability: [],
  cautions: [
    {
      code: 'onion-rows-stand-in',
      params: {},
      source: HANDBOOK,
    },
    {
      code: 'white-lisbon-heat',
      params: { stoppedC: 24.8 },
      source: 'Brewster 2008, read in a copy that had lost signs; one constant rebuilt by us',
    },
    slowInBeds,
    shortLivedSeed,
    autumnSlows,
  ],
};
