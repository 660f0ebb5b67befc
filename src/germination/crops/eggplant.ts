import { COMMON, HANDBOOK, hotSideUntested, usualBedTime, usualField, weakLot } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';

export const eggplant: CropRecord = {
  id: 'eggplant',
  name: 'Eggplant',
  latinName: 'Solanum melongena',
  days: [null, null, null, null, 13, 8, 5, null, null],
  percent: [null, null, null, null, 21, 53, 60, null, null],
  soilF: { minimum: 60, optimumFrom: 75, optimumTo: 90, maximum: 95 },
  frost: 'tender',
  chillingSensitive: false,
  sowingDepthCm: 1,
  maturity: { fromDays: 70, toDays: 85, countedFrom: 'planting-out' }, // UC Napa
  storageYears: 4,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 12,
  spreadLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 6,
  pickingDays: 56,
  isThinned: false,
  isFed: true,
  viability: [],
  cautions: [
    weakLot('never more than 60 seedlings from a hundred seeds, and 21 at 20 °C.'),
    {
      code: 'cold-side-untested',
      text:
        'Nobody tested this crop in soil under 20 °C for the chart. Colder soil is a guess; sow it indoors in ' +
        'the warm.',
      source: `${HANDBOOK}; sowing indoors: ${COMMON}`,
    },
    hotSideUntested(30, 'It did best there, so what heat does to it beyond that is a guess.'),
  ],
};
