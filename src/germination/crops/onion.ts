import { BEDS, shortLivedSeed, slowInBeds } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';
import { COMMON_TERMS, viabilitySet } from '../storage/viability-sets.js';

export const onion: CropRecord = {
  id: 'onion',
  name: 'Onion',
  latinName: 'Allium cepa',
  days: [136, 31, 13, 7, 5, 4, 4, 13, 'none'],
  percent: [90, 98, 98, 98, 99, 97, 91, 73, 2],
  soilF: { minimum: 35, optimumFrom: 50, optimumTo: 95, maximum: 95 },
  frost: 'hardy',
  chillingSensitive: false,
  sowingDepthCm: 1.3,
  maturity: null, // bulbs wait for the day length that suits the kind, so days from sowing say little
  storageYears: 1,
  field: { from: 0.05, to: 0.88 },
  bedTimeFactor: { from: 1, to: 2.3 },
  maxHalfDays: 16,
  sigmaLog10: 0.107, // from Brewster 2008, for germination; the tightening on the way up is our arithmetic
  ownHotThresholdC: null,
  weeksInTrays: 8,
  pickingDays: null,
  growth: {
    seedlingFrostC: -6,
    leastSoilC: null,
    bedFactor: 1,
    patienceFactor: 1.5,
    harvest: { by: 'day-length', swellsAfterDays: 10, ripensInDays: 60, leastLeafDays: 45, endFrostC: -10 },
    boltingDayLengthH: null,
  },
  plantingOut: null,
  isThinned: true,
  isFed: true,
  viability: [
    viabilitySet('Ellis, Roberts 1981', { ke: 6.975, cw: 3.47, ch: 0.04, cq: 0.000428 }),
    viabilitySet('Ellis and others 1990, at one temperature', { ke: 9.083, cw: 5.81, ...COMMON_TERMS }),
  ],
  cautions: [
    slowInBeds,
    {
      code: 'beds-differ',
      params: { fromSeedlings: 5, toSeedlings: 88, crop: 'onion' },
      source: BEDS,
    },
    {
      code: 'day-length',
      params: {},
      source: 'Myers, Oregon State University Extension, 2006; latitude: Littlefield, National Gardening Association',
    },
    {
      code: 'bolts-after-cold',
      params: { crop: 'onion', belowC: 15 },
      source:
        'Brewster 2008, for the leaves; Holdsworth & Heath (abstract); Zandstra, Michigan State University, 1985, for ' +
        'sets; small ones: common practice, no source',
    },
    shortLivedSeed,
  ],
};
