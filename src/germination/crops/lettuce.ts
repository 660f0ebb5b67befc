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
  maturity: { fromDays: 70, toDays: 85, countedFrom: 'sowing' }, // UC Napa
  storageYears: 6,
  field: { from: 0.2, to: 0.67 },
  bedTimeFactor: { from: 1, to: 1.4 },
  maxHalfDays: 20,
  spreadLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 3,
  pickingDays: 14,
  isThinned: true,
  isFed: true,
  viability: [
    viabilitySet('Ellis and others 1989', { ke: 7.938, cw: 5.25, ...COMMON_TERMS }),
    viabilitySet('Kraak, Vos 1987, with the terms of Dickie and others 1990', { ke: 6.895, cw: 4.2, ...COMMON_TERMS }),
  ],
  cautions: [
    {
      code: 'stopped-by-heat',
      text:
        'Hot soil stops the seed: 99 seedlings in a hundred seeds at 25 °C, 12 at 30 °C. Kinds differ: the ' +
        'limit lay between 25.7 and 32.8 °C in 22 of them.',
      source: `${HANDBOOK}; limits: Gray 1975 (abstract)`,
    },
    {
      code: 'sleeps-after-heat',
      text:
        'Seed held by heat often starts once the soil cools, but long heat can put it into a sleep that cooling ' +
        'alone does not end. Sow in the evening, shade the row and keep it wet.',
      source: 'University of Arizona, on lettuce; Gray 1975 (abstract); remedies common practice, no source',
    },
    {
      code: 'some-need-light',
      text:
        'Some kinds need light to sprout, and one that did not came to need it after lying wet at 35 °C. Cover ' +
        'the seed thinly.',
      source: 'Borthwick, Hendricks, Toole & Toole 1954 (abstract; authors and year from memory)',
    },
    {
      code: 'beds-differ',
      text: 'Beds gave only 20 to 67 of every hundred seedlings that the laboratory promised.',
      source: BEDS,
    },
    {
      code: 'bolts-in-heat-and-long-days',
      text:
        'Heat, long days and drought send the plants to seed, and the leaves turn bitter. What is sown from late ' +
        'spring on is best of a slow-bolting kind, shaded and never dry.',
      source:
        'Iowa State University Extension 1994, on lettuce; Sukprakarn 1985 (abstract); remedies common practice, ' +
        'no source',
    },
    autumnSlows,
  ],
};
