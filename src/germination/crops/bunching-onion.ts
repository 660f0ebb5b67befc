import { autumnSlows, HANDBOOK, shortLivedSeed, slowInBeds } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';
import { onion } from './onion.js';

/** Not in the handbook's table: onion's rows stand in. */
export const bunchingOnion: CropRecord = {
  ...onion,
  id: 'bunching-onion',
  name: 'Bunching onion',
  latinName: 'Allium fistulosum',
  maturity: { fromDays: 70, toDays: 85, countedFrom: 'sowing' }, // UC Napa, as green onion
  weeksInTrays: 8,
  pickingDays: 21,
  isThinned: false,
  isFed: true,
  viability: [],
  cautions: [
    {
      code: 'onion-rows-stand-in',
      text: "The handbook has no bunching onion. The days and percentages are onion's, which is another species.",
      source: HANDBOOK,
    },
    {
      code: 'white-lisbon-heat',
      text:
        'In a published lot of White Lisbon, a salad onion that is really Allium cepa, ' +
        'the tenth of the seed that heat holds hardest stopped near 24.8 °C.',
      source: 'Brewster 2008, read in a copy that had lost signs; one constant rebuilt by us',
    },
    slowInBeds,
    shortLivedSeed,
    autumnSlows,
  ],
};
