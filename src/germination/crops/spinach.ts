import { autumnSlows, treatedSeed, usualBedTime, usualField } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';

export const spinach: CropRecord = {
  id: 'spinach',
  name: 'Spinach',
  latinName: 'Spinacia oleracea',
  days: [63, 23, 12, 7, 6, 5, 6, 'none', 'none'],
  percent: [83, 96, 91, 82, 52, 28, 32, 0, 0],
  soilF: { minimum: 35, optimumFrom: 45, optimumTo: 75, maximum: 85 },
  frost: 'hardy',
  chillingSensitive: false,
  sowingDepthCm: 1.3,
  maturity: { fromDays: 30, toDays: 60, countedFrom: 'sowing' }, // 1918
  storageYears: 3,
  field: usualField,
  bedTimeFactor: usualBedTime,
  maxHalfDays: 20,
  ownHotThresholdC: 20, // Leskovar, Esensee & Belefant-Miller 1999, J. Am. Soc. Hort. Sci. 124:301
  spreadLog10: null,
  weeksInTrays: 3,
  pickingDays: 14,
  isThinned: true,
  isFed: true,
  viability: [],
  cautions: [
    {
      code: 'careful-above-20',
      text:
        'Heat begins to stop the seed above 20 °C and stopped all of it at 35 °C, though cool nights help. Much ' +
        'of what is stopped can still start when the soil cools.',
      source: 'Leskovar, Esensee & Belefant-Miller 1999 (abstract)',
    },
    {
      code: 'weak-lot',
      text:
        'The one lot of seed behind the chart seems to have been poor: 52 seedlings from a hundred seeds at 20 ' +
        '°C, where nearly all came in another study. A sound packet may well do better.',
      source:
        'our judgement of the handbook row; the other study: Suganuma & Ohno 1984 (abstract; authors from ' + 'memory)',
    },
    {
      code: 'not-too-wet',
      text:
        'In soil that is even a little too wet the seed coat turns slimy and shuts out air. Keep the bed moist, ' +
        'not soaked.',
      source: 'Heydecker & Orphanos (abstract; authors from memory)',
    },
    treatedSeed,
    {
      code: 'bolts-in-long-days',
      text:
        'Days of 12 to 15 hours, by kind, send the plants to seed, and warmth hurries it; then the leaves are over. ' +
        'Sow early in spring or when summer is ending.',
      source: 'Utah State University Extension 2012, on winter spinach; when to sow: common practice, no source',
    },
    autumnSlows,
  ],
};
