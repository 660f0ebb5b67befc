import { shortLivedSeed, usualBedTime, usualField } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';

export const parsley: CropRecord = {
  id: 'parsley',
  name: 'Parsley',
  latinName: 'Petroselinum crispum',
  days: [null, null, 29, 17, 14, 13, 12, null, null],
  percent: [null, null, 63, null, 69, 64, 50, null, null],
  soilF: { minimum: 40, optimumFrom: 50, optimumTo: 85, maximum: 90 },
  frost: 'hardy',
  chillingSensitive: false,
  sowingDepthCm: 1,
  maturity: { fromDays: 70, toDays: 85, countedFrom: 'sowing' }, // UC Napa
  storageYears: 1,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 24,
  spreadLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: 6,
  pickingDays: 56,
  isThinned: true,
  isFed: true,
  viability: [],
  cautions: [
    {
      code: 'slow',
      text:
        'Do not give up: in the field the first seedlings came no sooner than two and a half weeks after ' +
        'sowing, and more followed for three weeks. Only 14 to 50 came from a hundred seeds.',
      source: 'Podlaski, Chrobak & Wyszkowska, on treated parsley seed in the field (summary)',
    },
    {
      code: 'soak',
      text:
        'Soaking the seed in water for 12 to 36 hours before sowing brought more of it up. Do not soak treated ' +
        'seed.',
      source: 'Dursun & Ekinci 2010 (abstract)',
    },
    shortLivedSeed,
  ],
};
