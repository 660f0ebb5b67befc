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
  sigmaLog10: null,
  weeksInTrays: 3,
  pickingDays: 14,
  growth: {
    seedlingFrostC: -8,
    leastSoilC: null,
    bedFactor: 1,
    patienceFactor: 1.2,
    harvest: {
      by: 'heat',
      baseTempC: 4.4,
      ceilingTempC: 24,
      heatUnitsCDays: 370,
      countedFrom: 'emergence',
      leastPickingDays: 7,
      endFrostC: -8,
      hotHarvestC: 21,
    },
    boltingDayLengthH: 14.5, // critical lengths of 12.5 to 14 h are published; this is tuned
  },
  plantingOut: null,
  isThinned: true,
  isFed: true,
  viability: [],
  cautions: [
    {
      code: 'careful-above-20',
      params: { aboveC: 20, stoppedC: 35 },
      source: 'Leskovar, Esensee & Belefant-Miller 1999 (abstract)',
    },
    {
      code: 'weak-lot',
      params: { crop: 'spinach', atC: 20, coolerC: null, warmerC: null },
      source:
        'our judgement of the handbook row; the other study: Suganuma & Ohno 1984 (abstract; authors from ' + 'memory)',
    },
    {
      code: 'not-too-wet',
      params: {},
      source: 'Heydecker & Orphanos (abstract; authors from memory)',
    },
    treatedSeed,
    {
      code: 'bolts-in-long-days',
      params: {},
      source: 'Utah State University Extension 2012, on winter spinach; when to sow: common practice, no source',
    },
    autumnSlows,
  ],
};
