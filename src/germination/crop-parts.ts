import type { Caution, Span } from './crop.js';

export const HANDBOOK = "Harrington & Minges 1954, as printed in Knott's Handbook, 4th ed. 1997";
const STORAGE = "Knott's Handbook, 4th ed. 1997, as given by Iowa State University";
export const BEDS = 'Bralewski & Holubowicz 2008 (abstract)';
export const COMMON = 'common practice, no source';

/** The field emergence ratio of crops without a published one: our assumption, wide on purpose. */
export const usualField: Span = { from: 0.4, to: 0.9 };
export const usualBedTime: Span = { from: 1, to: 1.2 };

export const treatedSeed: Caution = {
  code: 'treated-seed',
  text:
    'Seed sold as treated, often brightly dyed, carries a pesticide: wear gloves, wash afterwards, keep it from ' +
    'children, animals and birds, and never eat it or feed it. Follow the label; ask local advisers about leftovers.',
  source: 'National Pesticide Information Center 2023, for the dye; the rest common practice, no source',
};

export const coldWetSoil: Caution = {
  code: 'cold-wet-soil',
  text:
    'In cold, wet soil the seed lies long, and rots or is eaten before it is up. ' +
    'Wait for warmer soil rather than sow early, and do not sow just before a cold rain.',
  source: 'Iowa State University Extension, on cold injury; written of soybean and maize',
};

export const shortLivedSeed: Caution = {
  code: 'short-lived-seed',
  text: 'The seed keeps for about one year. Buy it fresh, or test some on damp paper before you sow an older packet.',
  source: `${STORAGE}; the test: ${COMMON}`,
};

export const slowInBeds: Caution = {
  code: 'beds-take-longer',
  text:
    'The chart counts days much like those in which onion roots appear, not shoots. ' +
    'In a bed the seedlings may need about twice as long, so do not give the row up early.',
  source: 'derived: chart days against Brewster 2008 (roots) and Bierhuizen & Wagenvoort 1974 (shoots, from memory)',
};

export const slowerElsewhere: Caution = {
  code: 'slower-elsewhere',
  text: 'Another set of published figures makes this crop more than twice as slow at 20 °C. Give it time.',
  source: 'Bierhuizen & Wagenvoort 1974, from memory',
};

export const autumnSlows: Caution = {
  code: 'autumn-slows',
  text:
    'Sown in late summer, the plants grow into short, cool days and are ready later than the days to harvest say: ' +
    'allow about two weeks more, or 80 days where a packet says 65.',
  source: 'McDaniel, Virginia Tech, 2011, on planning autumn crops',
};

export function weakLot(row: string): Caution {
  return {
    code: 'weak-lot',
    text: `The one lot of seed behind the chart seems to have been poor: ${row} A sound packet may well do better.`,
    source: `our judgement of the row in ${HANDBOOK}`,
  };
}

export function hotSideUntested(testedToC: number, guess: string): Caution {
  return {
    code: 'hot-side-untested',
    text: `Nobody timed this crop in soil warmer than ${testedToC} °C for the chart. ${guess}`,
    source: HANDBOOK,
  };
}
