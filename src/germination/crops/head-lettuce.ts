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
    ...lettuce.growth,
    // heat units as for lettuce; heat and frost: assumed
    harvest: {
      by: 'heat',
      baseTempC: 4.4,
      ceilingTempC: 24,
      heatUnitsCDays: 1020,
      countedFrom: 'emergence',
      leastPickingDays: 7,
      endFrostC: -4,
      hotHarvestC: 22,
    },
  },
};
