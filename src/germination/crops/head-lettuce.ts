import type { CropRecord } from '../crop-record.js';
import { lettuce } from './lettuce.js';

/** Its seed is lettuce's; heads take longer than leaves, and bear less heat. */
export const headLettuce: CropRecord = {
  ...lettuce,
  id: 'head-lettuce',
  name: 'Head lettuce',
  latinName: 'Lactuca sativa var. capitata',
  maturity: { fromDays: 70, toDays: 85, countedFrom: 'sowing' }, // UC Napa
  growth: {
    seedlingFrostC: -6,
    leastSoilC: null,
    bedFactor: 1,
    patienceFactor: 1.2,
    harvest: {
      // heat units as for lettuce; heat and frost: assumed
      by: 'heat',
      baseTempC: 4.4,
      ceilingTempC: 24,
      heatUnitsCDays: 1020,
      countedFrom: 'emergence',
      leastPickingDays: 7,
      endFrostC: -4,
      hotHarvestC: 22,
    },
    boltingDayLengthH: null,
  },
  plantingOut: {
    weeksFromSowing: 5,
    frost: { limitC: -4, days: 30 },
    nights: null,
    leastSoilC: null,
  },
};
