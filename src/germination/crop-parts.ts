import type { CautionFact } from './caution-facts.js';
import type { Caution, Span } from './crop.js';
import type { PlantingOut } from './growth.js';

export const HANDBOOK = "Harrington & Minges 1954, as printed in Knott's Handbook, 4th ed. 1997";
const STORAGE = "Knott's Handbook, 4th ed. 1997, as given by Iowa State University";
export const BEDS = 'Bralewski & Holubowicz 2008 (abstract)';
export const COMMON = 'common practice, no source';

/** The field emergence ratio of crops without a published one: our assumption, wide on purpose. */
export const usualField: Span = { from: 0.4, to: 0.9 };
export const usualBedTime: Span = { from: 1, to: 1.2 };

/**
 * Planting out of crops that want warm nights and warm soil: nights of 10 to 13 °C and soil of 18 °C for pepper, eggplant, cucumber
 * and melons (several extension services), and no frost for 45 days.
 *
 * @param weeksFromSowing From the sowing in the tray until it goes out [weeks].
 */
export const afterWarmNights = (weeksFromSowing: number): PlantingOut => ({
  weeksFromSowing,
  frost: { limitC: 0, days: 45 },
  nights: { by: 'mean', fairC: 10, goodC: 12.8 },
  leastSoilC: 18.3,
});

export const treatedSeed: Caution = {
  code: 'treated-seed',
  params: {},
  source: 'National Pesticide Information Center 2023, for the dye; the rest common practice, no source',
};

export const coldWetSoil: Caution = {
  code: 'cold-wet-soil',
  params: {},
  source: 'Iowa State University Extension, on cold injury; written of soybean and maize',
};

export const shortLivedSeed: Caution = {
  code: 'short-lived-seed',
  params: {},
  source: `${STORAGE}; the test: ${COMMON}`,
};

export const slowInBeds: Caution = {
  code: 'beds-take-longer',
  params: {},
  source: 'derived: chart days against Brewster 2008 (roots) and Bierhuizen & Wagenvoort 1974 (shoots, from memory)',
};

export const slowerElsewhere: Caution = {
  code: 'slower-elsewhere',
  params: { atC: 20 },
  source: 'Bierhuizen & Wagenvoort 1974, from memory',
};

/** Furanocoumarins of the family, and sun: strongest in parsnip and celery. */
export const burningSap: Caution = {
  code: 'burning-sap',
  params: {},
  source: 'reports of burns by sap and sun from celery and parsnip, from memory',
};

/** Hemlock, water dropwort and fool's parsley are of the same family. */
export const lookAlikes: Caution = { code: 'look-alikes', params: {}, source: COMMON };

export const autumnSlows: Caution = {
  code: 'autumn-slows',
  params: {},
  source: 'McDaniel, Virginia Tech, 2011, on planning autumn crops',
};

export const weakLot = (params: CautionParams<'weak-lot'>): Caution => ({
  code: 'weak-lot',
  params,
  source: `our judgement of the row in ${HANDBOOK}`,
});

/** @param there What the crop did in the warmest soil that it was timed in. */
export const hotSideUntested = (
  testedToC: number,
  there: CautionParams<'hot-side-untested'>['there'],
  counted: Omit<CautionParams<'hot-side-untested'>, 'testedToC' | 'there'> = NOT_COUNTED,
): Caution => ({ code: 'hot-side-untested', params: { testedToC, there, ...counted }, source: HANDBOOK });

const NOT_COUNTED = { seedlings: null, coolerSeedlings: null, coolerC: null };

type CautionParams<Code extends CautionFact['code']> = Extract<CautionFact, { code: Code }>['params'];
