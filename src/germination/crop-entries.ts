import type { Caution, FrostClass, Maturity, Span } from './crop.js';

/** `'none'`: timed, and none or too few came. `null`: never tested. */
export type Cell = number | 'none' | null;

/** A crop as the handbook's table and the other publications named below give it. */
export interface CropEntry {
  readonly id: string;
  readonly name: string;
  readonly latinName: string;
  /** Days from sowing until half of those that come are up, at each of `handbookTemperaturesC`. */
  readonly days: readonly Cell[];
  /** Normal seedlings in a hundred seeds, at each of `handbookTemperaturesC`. */
  readonly percent: readonly (number | null)[];
  /** Soil temperatures for germination as printed [°F]. */
  readonly soilF: {
    readonly minimum: number;
    readonly optimumFrom: number;
    readonly optimumTo: number;
    readonly maximum: number;
  };
  readonly frost: FrostClass;
  /** Does soil below 10 °C harm the wet seed, rather than only delay it? */
  readonly chillingSensitive: boolean;
  readonly sowingDepthCm: number;
  readonly maturity: Maturity | null;
  /** Years in good storage after which seed should be tested before use. */
  readonly storageYears: number;
  /** Share of a laboratory's stand that beds have given, 0 to 1. */
  readonly field: Span;
  /** How many times longer than the chart beds have taken. */
  readonly bedTimeFactor: Span;
  /** Days within which half should be up for a sowing to be worth making. */
  readonly maxHalfDays: number;
  /** Spread among seeds: standard deviation of log10 of the time to come up; 0.10 where left out. */
  readonly spreadLog10?: number;
  /** Where the crop's own row is a poor guide to heat: the threshold published elsewhere [°C]. */
  readonly ownHotThresholdC?: number;
  readonly cautions: readonly Caution[];
}

/** The constant temperatures of the handbook's table [°C]. */
export const handbookTemperaturesC = [0, 5, 10, 15, 20, 25, 30, 35, 40] as const;

const HANDBOOK = "Harrington & Minges 1954, as printed in Knott's Handbook, 4th ed. 1997";
const STORAGE = "Knott's Handbook, 4th ed. 1997, as given by Iowa State University";
const BEDS = 'Bralewski & Holubowicz 2008 (abstract)';
const COMMON = 'common practice, no source';

/** A share or factor for crops of which none was found: our assumption, wide on purpose. */
const usualField: Span = { from: 0.4, to: 0.9 };
const usualBedTime: Span = { from: 1, to: 1.2 };

const treatedSeed: Caution = {
  code: 'treated-seed',
  text:
    'Seed sold as treated, often brightly dyed, carries a pesticide: wear gloves, wash afterwards, keep it from ' +
    'children, animals and birds, and never eat it or feed it. Follow the label; ask local advisers about leftovers.',
  source: 'National Pesticide Information Center 2023, for the dye; the rest common practice, no source',
};

const coldWetSoil: Caution = {
  code: 'cold-wet-soil',
  text:
    'In cold, wet soil the seed lies long, and rots or is eaten before it is up. ' +
    'Wait for warmer soil rather than sow early, and do not sow just before a cold rain.',
  source: 'Iowa State University Extension, on cold injury; written of soybean and maize',
};

const shortLivedSeed: Caution = {
  code: 'short-lived-seed',
  text: 'The seed keeps for about one year. Buy it fresh, or test some on damp paper before you sow an older packet.',
  source: `${STORAGE}; the test: ${COMMON}`,
};

const slowInBeds: Caution = {
  code: 'beds-take-longer',
  text:
    'The chart counts days much like those in which onion roots appear, not shoots. ' +
    'In a bed the seedlings may need about twice as long, so do not give the row up early.',
  source: 'derived: chart days against Brewster 2008 (roots) and Bierhuizen & Wagenvoort 1974 (shoots, from memory)',
};

const slowerElsewhere: Caution = {
  code: 'slower-elsewhere',
  text: 'Another set of published figures makes this crop more than twice as slow at 20 °C. Give it time.',
  source: 'Bierhuizen & Wagenvoort 1974, from memory',
};

const autumnSlows: Caution = {
  code: 'autumn-slows',
  text:
    'Sown in late summer, the plants grow into short, cool days and are ready later than the days to harvest say: ' +
    'allow about two weeks more, or 80 days where a packet says 65.',
  source: 'McDaniel, Virginia Tech, 2011, on planning autumn crops',
};

function weakLot(row: string): Caution {
  return {
    code: 'weak-lot',
    text: `The one lot of seed behind the chart seems to have been poor: ${row} A sound packet may well do better.`,
    source: `our judgement of the row in ${HANDBOOK}`,
  };
}

function hotSideUntested(testedToC: number, guess: string): Caution {
  return {
    code: 'hot-side-untested',
    text: `Nobody timed this crop in soil warmer than ${testedToC} °C for the chart. ${guess}`,
    source: HANDBOOK,
  };
}

// Days and percent: Harrington & Minges 1954, as printed in Knott's Handbook, 4th ed. 1997. One lot of seed for each
// crop, sown 1.3 cm deep at constant temperature; days are whole, so every one is good to about a day. Cells that
// copies print differently, and why one was chosen, are listed with the golden table.
// Soil temperatures: Oregon State University Extension; lima bean, celery, lettuce and okra Alabama Cooperative
// Extension System.
// Sowing depths: common practice, no source. Frost classes: common practice, no source; lists differ, chiefly on
// parsley and parsnip. Which crops cold harms as wet seed: evidence for maize, lima bean and snap bean, assumed for
// the cucurbits and okra (wet watermelon seed bore 0 °C for ten days in one study).
// Maturity: "UC Napa" is the University of California Master Gardeners of Napa County, "1918" a list of that year; the
// others are from memory, and which day seed packets count from is common practice, no source.
// Storage years: Knott's Handbook, 4th ed. 1997, as given by Iowa State University.
// Field: Bralewski & Holubowicz 2008 for onion, carrot, lettuce, radish and cabbage; otherwise assumed.
// Bed time factor: derived for onion, lettuce and carrot from Bierhuizen & Wagenvoort 1974 (from memory);
// otherwise assumed.
// Most days to half: 1.2 times the chart's days at the low end of the best soil temperatures, held within 12 to 21;
// more for crops that are slow at their best.

const onion: CropEntry = {
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
  spreadLog10: 0.107, // from Brewster 2008, for germination; the tightening on the way up is our arithmetic
  cautions: [
    slowInBeds,
    {
      code: 'beds-differ',
      text: 'Beds gave anything from 5 to 88 of every hundred seedlings that the laboratory promised.',
      source: BEDS,
    },
    {
      code: 'day-length',
      text:
        'Bulbs form once the day is long enough for the kind: 11 to 13 hours for short-day onions, 13 to 14 for ' +
        'intermediate, 14 and more for long-day ones, which suit places beyond about 35° of latitude. Sow early: ' +
        'small plants make small bulbs.',
      source: 'Myers, Oregon State University Extension, 2006; latitude: Littlefield, National Gardening Association',
    },
    {
      code: 'bolts-after-cold',
      text:
        'Cold below about 15 °C sends plants to seed that are already thick: from about seven leaves, counting those ' +
        'still hidden, in a spring kind, from ten in an autumn one. Sets are thick from the first: plant small ones.',
      source:
        'Brewster 2008, for the leaves; Holdsworth & Heath (abstract); Zandstra, Michigan State University, 1985, for ' +
        'sets; small ones: common practice, no source',
    },
    shortLivedSeed,
  ],
};

/** Not in the handbook's table: onion's rows stand in. */
const bunchingOnion: CropEntry = {
  ...onion,
  id: 'bunching-onion',
  name: 'Bunching onion',
  latinName: 'Allium fistulosum',
  maturity: { fromDays: 70, toDays: 85, countedFrom: 'sowing' }, // UC Napa, as green onion
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

export const cropEntries: readonly CropEntry[] = [
  {
    id: 'asparagus',
    name: 'Asparagus',
    latinName: 'Asparagus officinalis',
    days: ['none', 'none', 53, 24, 15, 10, 12, 20, 28],
    percent: [0, 0, 61, 80, 88, 95, 79, 37, 0],
    soilF: { minimum: 50, optimumFrom: 60, optimumTo: 85, maximum: 95 },
    frost: 'hardy',
    chillingSensitive: false,
    sowingDepthCm: 2.5,
    maturity: null, // the first cutting is years away
    storageYears: 3,
    field: usualField,
    bedTimeFactor: usualBedTime,
    maxHalfDays: 21,
    cautions: [
      {
        code: 'slow',
        text:
          'Slow seed: half was up in 10 days at 25 °C, in 24 at 15 °C and in 53 at 10 °C. Keep the row moist and ' +
          'leave it undisturbed.',
        source: HANDBOOK,
      },
      {
        code: 'years-to-harvest',
        text: 'Plants grown from seed are left uncut for about two years, so no harvest date is given here.',
        source: COMMON,
      },
      {
        code: 'frost-on-shoots',
        text: 'The roots live through winter, but a frost kills the young shoots that stand above ground.',
        source: COMMON,
      },
      {
        code: 'no-sound-seedlings-hot',
        text:
          'At 40 °C some seed came up after 28 days, but no seedling was sound. Do not read those days as a ' +
          'reason to sow.',
        source: HANDBOOK,
      },
    ],
  },
  {
    id: 'lima-bean',
    name: 'Lima bean',
    latinName: 'Phaseolus lunatus',
    days: [null, null, 'none', 31, 18, 7, 7, 'none', null],
    percent: [null, null, 1, 52, 82, 90, 88, 2, null],
    soilF: { minimum: 60, optimumFrom: 60, optimumTo: 85, maximum: 85 },
    frost: 'tender',
    chillingSensitive: true,
    sowingDepthCm: 4,
    maturity: { fromDays: 65, toDays: 90, countedFrom: 'sowing' }, // from memory
    storageYears: 3,
    field: usualField,
    bedTimeFactor: usualBedTime,
    maxHalfDays: 21,
    cautions: [
      {
        code: 'cold-first-day',
        text:
          'Cold while the dry seed takes its first water can harm it for good; cold that comes after it has drunk ' +
          'in the warm did not. Wait for soil of 15 °C or more.',
        source:
          'Pollock & Toole, on lima bean (abstract; 1966 from memory); 15 °C: Ontario Ministry of Agriculture, ' +
          'Food and Rural Affairs 2011',
      },
      coldWetSoil,
      {
        code: 'heat-thins',
        text: 'Heat thins the row rather than slows it: 88 seedlings in a hundred seeds at 30 °C, but 2 at 35 °C.',
        source: HANDBOOK,
      },
      treatedSeed,
    ],
  },
  {
    id: 'snap-bean',
    name: 'Snap bean',
    latinName: 'Phaseolus vulgaris',
    days: ['none', 'none', 'none', 16, 11, 8, 6, 6, 'none'],
    percent: [0, 0, 1, 97, 90, 97, 47, 39, 0],
    soilF: { minimum: 60, optimumFrom: 60, optimumTo: 85, maximum: 95 },
    frost: 'tender',
    chillingSensitive: true,
    sowingDepthCm: 3,
    maturity: { fromDays: 50, toDays: 80, countedFrom: 'sowing' }, // UC Napa
    storageYears: 3,
    field: usualField,
    bedTimeFactor: usualBedTime,
    maxHalfDays: 18,
    cautions: [
      {
        code: 'cold-first-day',
        text: 'Very dry seed is injured as it swells, and more readily in cold water. Wait for soil of 13 °C or more.',
        source: 'Wolk and others 1989 (abstract); 13 °C: Ontario Ministry of Agriculture, Food and Rural Affairs 2011',
      },
      coldWetSoil,
      {
        code: 'heat-thins',
        text:
          'Heat thins the row rather than slows it: 97 seedlings in a hundred seeds at 25 °C, but 47 at 30 °C, ' +
          'and just as soon.',
        source: HANDBOOK,
      },
      treatedSeed,
      autumnSlows,
    ],
  },
  {
    id: 'beet',
    name: 'Beet',
    latinName: 'Beta vulgaris',
    days: [null, 42, 17, 10, 6, 5, 5, 5, null],
    percent: [null, 53, 72, 88, 90, 97, 89, 35, null],
    soilF: { minimum: 40, optimumFrom: 50, optimumTo: 85, maximum: 95 },
    frost: 'half-hardy',
    chillingSensitive: false,
    sowingDepthCm: 1.5,
    maturity: { fromDays: 50, toDays: 80, countedFrom: 'sowing' }, // UC Napa
    storageYears: 4,
    field: usualField,
    bedTimeFactor: usualBedTime,
    maxHalfDays: 20,
    cautions: [
      {
        code: 'seed-cluster',
        text:
          'Each "seed" is a small dried fruit with several seeds in it, so more seedlings may come than you ' +
          'sowed. Thin each clump to one plant.',
        source: 'Chicago Botanic Garden, on growing beets; single-seeded kinds are sold too (from memory)',
      },
      {
        code: 'crust',
        text:
          'Heavy rain on clay soil can set a crust that seedlings cannot lift. Sow shallow and keep the surface ' +
          'open.',
        source: 'Chicago Botanic Garden, on growing beets; the remedy common practice, no source',
      },
      treatedSeed,
      {
        code: 'bolts-after-cold',
        text:
          'Two to three weeks below 7 °C, once the plants have several true leaves, can send them to seed instead of ' +
          'making roots. Do not hurry the first sowing.',
        source: 'Cornell University, home gardening guide to beets; the advice common practice, no source',
      },
      autumnSlows,
    ],
  },
  {
    id: 'cabbage',
    name: 'Cabbage',
    latinName: 'Brassica oleracea var. capitata',
    days: [null, null, 15, 9, 6, 5, 4, null, null],
    percent: [null, 27, 78, 93, null, 99, null, null, null],
    soilF: { minimum: 40, optimumFrom: 45, optimumTo: 95, maximum: 100 },
    frost: 'hardy',
    chillingSensitive: false,
    sowingDepthCm: 1.3,
    maturity: { fromDays: 60, toDays: 110, countedFrom: 'sowing' }, // UC Napa
    storageYears: 4,
    field: { from: 0.65, to: 0.97 },
    bedTimeFactor: usualBedTime,
    maxHalfDays: 21,
    cautions: [
      hotSideUntested(30, 'It was still quickest there, so what heat does to it beyond that is a guess.'),
      {
        code: 'cold-side-untimed',
        text:
          'At 5 °C 27 seedlings came from a hundred seeds, but nobody noted when. Dates for soil under 10 °C are ' +
          'a guess.',
        source: HANDBOOK,
      },
    ],
  },
  {
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
    cautions: [
      {
        code: 'keep-moist',
        text:
          'Carrot seed stops when the soil around it dries and goes on once it is wet again. Keep the top of the ' +
          'bed moist until the row is up.',
        source: 'Finch-Savage and others 1998, on fifteen carrot seedbeds',
      },
      {
        code: 'crust',
        text:
          'Heavy rain soon after sowing can set a crust that the fine seedlings cannot lift, and was a major ' +
          'cause of poor rows in three years of trial sowings.',
        source: 'Hegarty, sowings of 1972 to 1974 of carrot and three other crops (abstract; author from memory)',
      },
      {
        code: 'beds-differ',
        text: 'Beds gave anything from 22 to 99 of every hundred seedlings that the laboratory promised.',
        source: BEDS,
      },
      {
        code: 'long-heat',
        text:
          'The longer wet seed lay at 35 °C, from one to four days, the less of it came up afterwards at 20 °C. ' +
          'Kinds differ widely.',
        source: 'Nascimento & Pereira 2007; Nascimento and others 2008 (abstracts)',
      },
      autumnSlows,
    ],
  },
  {
    id: 'cauliflower',
    name: 'Cauliflower',
    latinName: 'Brassica oleracea var. botrytis',
    days: [null, null, 20, 10, 6, 5, 5, null, null],
    percent: [null, null, 58, 60, null, 63, 45, null, null],
    soilF: { minimum: 40, optimumFrom: 45, optimumTo: 85, maximum: 100 },
    frost: 'half-hardy',
    chillingSensitive: false,
    sowingDepthCm: 1.3,
    maturity: { fromDays: 50, toDays: 85, countedFrom: 'planting-out' }, // from memory
    storageYears: 4,
    field: usualField,
    bedTimeFactor: usualBedTime,
    maxHalfDays: 21,
    cautions: [
      weakLot('never more than 63 seedlings from a hundred seeds.'),
      hotSideUntested(
        30,
        'There, 45 seedlings came from a hundred seeds, against 63 at 25 °C; hotter soil is a guess.',
      ),
    ],
  },
  {
    id: 'celery',
    name: 'Celery',
    latinName: 'Apium graveolens',
    days: ['none', 41, 16, 12, 7, 'none', 'none', 'none', null],
    percent: [0, 72, 70, 40, 97, 65, 0, 0, null],
    soilF: { minimum: 40, optimumFrom: 60, optimumTo: 70, maximum: 85 },
    frost: 'half-hardy',
    chillingSensitive: false,
    sowingDepthCm: 0.3,
    maturity: { fromDays: 85, toDays: 120, countedFrom: 'planting-out' }, // from memory
    storageYears: 3,
    field: usualField,
    bedTimeFactor: usualBedTime,
    maxHalfDays: 13,
    cautions: [
      {
        code: 'needs-light',
        text:
          'The seed needs light to sprout, though cool nights after warm days can stand in for it. Press it in ' +
          'and barely cover it, and never let it dry.',
        source: 'Pressman, Negbi, Sachs & Jacobsen 1977 (abstract); how to sow it: common practice, no source',
      },
      {
        code: 'hates-heat',
        text:
          'Steady warmth stops it: best at 10 to 15 °C, or with days of 22 to 25 °C and nights of 12 to 15 °C. ' +
          'The chart contradicts itself at 25 °C, so we count that as too hot.',
        source: 'study of five kinds over 0 to 40 °C (Thompson 1974, abstract; author and year from memory)',
      },
      weakLot('40 seedlings from a hundred seeds at 15 °C, between 70 at 10 °C and 97 at 20 °C.'),
      slowerElsewhere,
      {
        code: 'bolts-after-cold',
        text:
          'Cold on young plants sends them to seed; warmth while they are raised held that back. Keep them from ten ' +
          'days or more of nights under about 10 °C.',
        source: 'Sachs & Rylski 1980 (abstract); ten days and 10 °C: common practice, no source',
      },
    ],
  },
  {
    id: 'sweet-corn',
    name: 'Sweet corn',
    latinName: 'Zea mays',
    days: ['none', 'none', 22, 12, 7, 4, 4, 3, 'none'],
    percent: [0, 0, 47, 97, 97, 98, 91, 88, 10],
    soilF: { minimum: 50, optimumFrom: 60, optimumTo: 95, maximum: 105 },
    frost: 'tender',
    chillingSensitive: true,
    sowingDepthCm: 3,
    maturity: { fromDays: 70, toDays: 110, countedFrom: 'sowing' }, // UC Napa
    storageYears: 2,
    field: usualField,
    bedTimeFactor: usualBedTime,
    maxHalfDays: 13,
    cautions: [
      {
        code: 'cold-first-day',
        text:
          'Soil under 10 °C in the first day or two after sowing can harm the seed for good. Wait for 13 °C, or ' +
          '16 to 18 °C for the sugary and extra-sweet kinds.',
        source:
          'Purdue University Extension, on maize (newspaper report, 2020); soil temperatures: Ontario Ministry of ' +
          'Agriculture, Food and Rural Affairs 2011',
      },
      coldWetSoil,
      treatedSeed,
    ],
  },
  {
    id: 'cucumber',
    name: 'Cucumber',
    latinName: 'Cucumis sativus',
    days: ['none', 'none', 'none', 13, 6, 4, 3, 3, null],
    percent: [0, 0, 0, 95, 99, 99, 99, 99, 49],
    soilF: { minimum: 60, optimumFrom: 60, optimumTo: 95, maximum: 105 },
    frost: 'tender',
    chillingSensitive: true,
    sowingDepthCm: 2,
    maturity: { fromDays: 60, toDays: 70, countedFrom: 'sowing' }, // UC Napa
    storageYears: 5,
    field: usualField,
    bedTimeFactor: usualBedTime,
    maxHalfDays: 14,
    cautions: [
      {
        code: 'no-cold-soil',
        text: 'No seed came up at 10 °C or below; at 15 °C it took 13 days, at 25 °C only 4. Wait for warm soil.',
        source: HANDBOOK,
      },
      coldWetSoil,
      slowerElsewhere,
      treatedSeed,
    ],
  },
  {
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
  },
  {
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
  },
  {
    id: 'muskmelon',
    name: 'Muskmelon',
    latinName: 'Cucumis melo',
    days: [null, null, null, null, 8, 4, 3, null, null],
    percent: [null, null, null, null, 38, 94, 90, null, null],
    soilF: { minimum: 60, optimumFrom: 75, optimumTo: 95, maximum: 100 },
    frost: 'tender',
    chillingSensitive: true,
    sowingDepthCm: 2,
    maturity: { fromDays: 83, toDays: 90, countedFrom: 'sowing' }, // UC Napa
    storageYears: 5,
    field: usualField,
    bedTimeFactor: usualBedTime,
    maxHalfDays: 12,
    cautions: [
      {
        code: 'cold-side-untested',
        text:
          'Nobody tested this crop in soil under 20 °C for the chart, and only 38 seedlings came from a hundred ' +
          'seeds there. Wait for warm soil.',
        source: HANDBOOK,
      },
      hotSideUntested(30, 'It was still quickest there, so what heat does to it beyond that is a guess.'),
      coldWetSoil,
      treatedSeed,
    ],
  },
  {
    id: 'okra',
    name: 'Okra',
    latinName: 'Abelmoschus esculentus',
    days: ['none', 'none', 'none', 27, 17, 13, 7, 6, 7],
    percent: [0, 0, 0, 74, 89, 92, 88, 85, 35],
    soilF: { minimum: 60, optimumFrom: 70, optimumTo: 95, maximum: 105 },
    frost: 'tender',
    chillingSensitive: true,
    sowingDepthCm: 2,
    maturity: { fromDays: 50, toDays: 65, countedFrom: 'sowing' }, // from memory
    storageYears: 2,
    field: usualField,
    bedTimeFactor: usualBedTime,
    maxHalfDays: 19,
    cautions: [
      {
        code: 'hard-seed',
        text:
          'Some of the seed has a coat that keeps water out, up to 24 in a hundred in one study. Soak it ' +
          'overnight in lukewarm water and sow it at once, but never soak treated seed.',
        source: 'Begum & Ayub, on okra seed harvest (abstract); soaking: common practice, no source',
      },
      {
        code: 'no-cold-soil',
        text: 'No seed came up at 10 °C or below, and at 15 °C it took 27 days. It is quickest at 30 to 35 °C.',
        source: HANDBOOK,
      },
      treatedSeed,
    ],
  },
  onion,
  bunchingOnion,
  {
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
  },
  {
    id: 'parsnip',
    name: 'Parsnip',
    latinName: 'Pastinaca sativa',
    days: [172, 57, 27, 19, 14, 15, 32, 'none', 'none'],
    percent: [82, 87, 79, 85, 89, 77, 51, 1, 0],
    soilF: { minimum: 35, optimumFrom: 50, optimumTo: 70, maximum: 85 },
    frost: 'hardy',
    chillingSensitive: false,
    sowingDepthCm: 1.3,
    maturity: { fromDays: 100, toDays: 130, countedFrom: 'sowing' }, // from memory
    storageYears: 1,
    field: usualField,
    bedTimeFactor: usualBedTime,
    maxHalfDays: 28,
    cautions: [
      shortLivedSeed,
      {
        code: 'slow',
        text:
          'Even at its best half was up only after 14 days, and at 10 °C after 27. Keep the row moist and mark ' +
          'it, for example with a few radishes.',
        source: `${HANDBOOK}; the radishes: ${COMMON}`,
      },
      {
        code: 'cool-soil',
        text: 'It likes cool soil: 89 seedlings from a hundred seeds at 20 °C, 51 at 30 °C, 1 at 35 °C.',
        source: HANDBOOK,
      },
    ],
  },
  {
    id: 'pea',
    name: 'Pea',
    latinName: 'Pisum sativum',
    days: [null, 36, 14, 9, 8, 6, 6, null, null],
    percent: [null, 89, 94, 93, 93, 94, 86, null, null],
    soilF: { minimum: 40, optimumFrom: 40, optimumTo: 75, maximum: 85 },
    frost: 'hardy',
    chillingSensitive: false,
    sowingDepthCm: 3,
    maturity: { fromDays: 55, toDays: 80, countedFrom: 'sowing' }, // UC Napa
    storageYears: 3,
    field: usualField,
    bedTimeFactor: usualBedTime,
    maxHalfDays: 21,
    cautions: [
      {
        code: 'wet-soil-rot',
        text:
          'Pea seed stands cold but rots in wet ground, wrinkled kinds more than smooth ones. Sow in soil that ' +
          'drains, and do not soak the seed in cold water.',
        source: 'Short & Lacy 1976 (abstract); Washington State University Extension',
      },
      hotSideUntested(30, 'There, 86 seedlings still came from a hundred seeds; hotter soil is a guess.'),
      treatedSeed,
      autumnSlows,
    ],
  },
  {
    id: 'pepper',
    name: 'Pepper',
    latinName: 'Capsicum annuum',
    days: ['none', 'none', 'none', 25, 13, 8, 8, 9, 'none'],
    percent: [0, 0, 1, 70, 96, 98, 95, 70, 0],
    soilF: { minimum: 60, optimumFrom: 65, optimumTo: 95, maximum: 95 },
    frost: 'tender',
    chillingSensitive: false,
    sowingDepthCm: 1,
    maturity: { fromDays: 60, toDays: 85, countedFrom: 'planting-out' }, // UC Napa
    storageYears: 2,
    field: usualField,
    bedTimeFactor: usualBedTime,
    maxHalfDays: 19,
    cautions: [
      {
        code: 'wants-warmth',
        text:
          'Half was up in 8 days at 25 to 30 °C, but in 25 at 15 °C, and at 10 °C hardly any came. Start it ' +
          'indoors in the warm.',
        source: `${HANDBOOK}; sowing indoors: ${COMMON}`,
      },
    ],
  },
  {
    id: 'radish',
    name: 'Radish',
    latinName: 'Raphanus sativus',
    days: ['none', 29, 11, 6, 4, 4, 3, null, null],
    percent: [0, 42, 76, 97, 95, 97, 95, null, null],
    soilF: { minimum: 40, optimumFrom: 45, optimumTo: 90, maximum: 95 },
    frost: 'hardy',
    chillingSensitive: false,
    sowingDepthCm: 1.3,
    maturity: { fromDays: 25, toDays: 50, countedFrom: 'sowing' }, // 1918
    storageYears: 5,
    field: { from: 0.67, to: 0.96 },
    bedTimeFactor: usualBedTime,
    maxHalfDays: 20,
    cautions: [
      hotSideUntested(30, 'It was still quickest there, so what heat does to it beyond that is a guess.'),
      {
        code: 'cold-thins',
        text: 'Cold soil thins the row: 42 seedlings in a hundred seeds at 5 °C, 76 at 10 °C, 97 at 15 °C.',
        source: HANDBOOK,
      },
      autumnSlows,
    ],
  },
  {
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
          'our judgement of the handbook row; the other study: Suganuma & Ohno 1984 (abstract; authors from ' +
          'memory)',
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
  },
  {
    id: 'tomato',
    name: 'Tomato',
    latinName: 'Solanum lycopersicum',
    days: ['none', 'none', 43, 14, 8, 6, 6, 9, 'none'],
    percent: [0, 0, 82, 98, 98, 97, 83, 46, 0],
    soilF: { minimum: 50, optimumFrom: 60, optimumTo: 85, maximum: 95 },
    frost: 'tender',
    chillingSensitive: false,
    sowingDepthCm: 1,
    maturity: { fromDays: 55, toDays: 85, countedFrom: 'planting-out' }, // from memory
    storageYears: 4,
    field: usualField,
    bedTimeFactor: usualBedTime,
    maxHalfDays: 16,
    cautions: [
      {
        code: 'wants-warmth',
        text:
          'Half was up in 6 days at 25 to 30 °C, in 14 at 15 °C and in 43 at 10 °C; at 5 °C none came. Where ' +
          'springs are cold, start it indoors.',
        source: `${HANDBOOK}; sowing indoors: ${COMMON}`,
      },
      {
        code: 'heat-thins',
        text: 'Strong heat thins the row: 83 seedlings in a hundred seeds at 30 °C, 46 at 35 °C.',
        source: HANDBOOK,
      },
    ],
  },
  {
    id: 'turnip',
    name: 'Turnip',
    latinName: 'Brassica rapa subsp. rapa',
    days: ['none', 'none', 5, 3, 2, 1, 1, 1, 3],
    percent: [1, 14, 79, 98, 99, 100, 99, 99, 88],
    soilF: { minimum: 40, optimumFrom: 60, optimumTo: 105, maximum: 105 },
    frost: 'hardy',
    chillingSensitive: false,
    sowingDepthCm: 1.3,
    maturity: { fromDays: 35, toDays: 60, countedFrom: 'sowing' }, // from memory
    storageYears: 4,
    field: usualField,
    bedTimeFactor: usualBedTime,
    maxHalfDays: 12,
    cautions: [
      {
        code: 'whole-days',
        text:
          'The chart counts whole days, and in warm soil it says 1: that may be half a day or a day and a half. ' +
          'Read it as "very quick", not as an hour.',
        source: HANDBOOK,
      },
      slowerElsewhere,
      autumnSlows,
    ],
  },
  {
    id: 'watermelon',
    name: 'Watermelon',
    latinName: 'Citrullus lanatus',
    days: [null, 'none', null, null, 12, 5, 4, 3, null],
    percent: [null, 0, null, 17, 94, 90, 92, 96, null],
    soilF: { minimum: 60, optimumFrom: 70, optimumTo: 95, maximum: 105 },
    frost: 'tender',
    chillingSensitive: true,
    sowingDepthCm: 2.5,
    maturity: { fromDays: 70, toDays: 100, countedFrom: 'sowing' }, // from memory
    storageYears: 4,
    field: usualField,
    bedTimeFactor: usualBedTime,
    maxHalfDays: 12,
    cautions: [
      {
        code: 'cool-and-light',
        text:
          'In soil of 20 °C or less light held the seed of one kind back, so cover it well. In the same study ten ' +
          'days wet at 0 °C did no harm: our cold warning errs on the safe side.',
        source: 'Sachs, on watermelon seed (abstract; author from memory)',
      },
      hotSideUntested(35, 'It did best there, so what heat does to it beyond that is a guess.'),
      {
        code: 'seedless-kinds',
        text: 'Seed of seedless kinds starts poorly. Sow it indoors in warm soil that is moist but never soaked.',
        source:
          'Texas Agricultural Extension Service, on seedless watermelon; how to sow it: common practice, no ' +
          'source',
      },
      treatedSeed,
    ],
  },
];
