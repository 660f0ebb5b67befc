import { autumnSlows, BEDS, lookAlikes } from '../crop-parts.js';
import type { CropRecord } from '../crop-record.js';

export const carrot: CropRecord = {
  id: 'carrot',
  name: 'Carrot',
  latinName: 'Daucus carota',
  days: ['none', 51, 17, 10, 7, 6, 6, 9, 'none'],
  percent: [0, 48, 93, 95, 96, 96, 95, 74, 0],
  soilF: { minimum: 40, optimumFrom: 45, optimumTo: 85, maximum: 95 },
  frost: 'half-hardy',
  chillingSensitive: false,
  sowingDepthCm: 1,
  maturity: { fromDays: 60, toDays: 85, countedFrom: 'sowing' }, // UC Napa
  storageYears: 3,
  field: { from: 0.22, to: 0.99 },
  bedTimeFactor: { from: 1, to: 1.4 },
  maxHalfDays: 21,
  sigmaLog10: null,
  ownHotThresholdC: null,
  weeksInTrays: null,
  pickingDays: 21,
  growth: {
    seedlingFrostC: -5,
    leastSoilC: null,
    bedFactor: 1,
    patienceFactor: 1.2,
    harvest: {
      by: 'heat',
      baseTempC: 4.4,
      ceilingTempC: 24,
      heatUnitsCDays: 1060,
      countedFrom: 'emergence',
      leastPickingDays: 0,
      endFrostC: -12,
      hotHarvestC: 25,
    },
    boltingDayLengthH: null,
  },
  plantingOut: null,
  isThinned: true,
  isFed: false,
  viability: [],
  cautions: [
    {
      code: 'keep-moist',
      params: {},
      source: 'Finch-Savage and others 1998, on fifteen carrot seedbeds',
    },
    {
      code: 'crust',
      params: { crop: 'carrot' },
      source: 'Hegarty, sowings of 1972 to 1974 of carrot and three other crops (abstract; author from memory)',
    },
    {
      code: 'beds-differ',
      params: { fromSeedlings: 22, toSeedlings: 99, crop: 'carrot' },
      source: BEDS,
    },
    {
      code: 'long-heat',
      params: { hotC: 35, afterC: 20 },
      source: 'Nascimento & Pereira 2007; Nascimento and others 2008 (abstracts)',
    },
    autumnSlows,
    lookAlikes,
    {
      code: 'bolts-after-cold',
      params: { crop: 'carrot', belowC: 10 },
      source:
        'Atherton and others 1990: the first bolters after 126 °C·d of chilling, nine in ten after 336; leaves and 10 °C: Michigan State University Extension',
    },
  ],
};
