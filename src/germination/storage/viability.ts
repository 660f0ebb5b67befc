import { ScienceError } from '../../basics/errors.js';
import { normalCdf } from '../../basics/numerics/normal-cdf.js';
import { probit } from '../../basics/numerics/probit.js';

/** What a species loses in store: the four constants of the viability equation. */
export interface ViabilityConstants {
  readonly ke: number;
  readonly cw: number;
  readonly ch: number;
  readonly cq: number;
}

/** Where the equation holds: moisture [% of fresh weight] and temperature of the store [°C]. */
export const VIABILITY_HOLDS = { moistureFrom: 5, moistureTo: 15, storeFromC: -13, storeToC: 50 };

/**
 * How long seed in store takes to lose one probit of its viability: from 84 % to 50 %, or from 50 % to 16 %.
 *
 * For seed that is kept closed, at one moisture and one temperature. Seed of unlike species must not be compared at equal
 * moisture: oily seed is drier than starchy seed in the same air.
 *
 * @param constants       The species' own.
 * @param moisturePercent Water in the seed [% of its fresh weight]. Range 5 to 15.
 * @param storeC          Temperature of the store [°C]. Range -13 to 50.
 * @returns Days, over 0.
 * @throws {ScienceError} `out-of-range` beyond those ranges.
 *
 * Formula: log10 σ = KE - CW log10 m - CH t - CQ t²
 * Validity: moisture of about 5 to 25 % as published, but later work found it to fail above about 15 % in lettuce, so
 * nothing above that is answered. Below about 5 % drying gains little more. -13 to 90 °C in eight species by Dickie
 * and others (1990), from memory; seeds in store above 50 °C are nobody's here.
 * Accuracy: as printed, 4 digits (fixtures/golden/days-per-probit.json). What the published constants of one species
 * differ by is far more, up to several-fold.
 * Source: Ellis, Roberts (1980). Improved equations for the prediction of seed longevity. Ann. Bot. 45: 13-30, as quoted in
 * the manual of the R package viabilitymetrics.
 * @example daysPerProbit({ ke: 6.975, cw: 3.47, ch: 0.04, cq: 0.000428 }, 8, 20) // => 741.4
 */
export function daysPerProbit({ ke, cw, ch, cq }: ViabilityConstants, moisturePercent: number, storeC: number): number {
  if (!viabilityHolds(moisturePercent, storeC)) {
    throw new ScienceError(
      'out-of-range',
      `daysPerProbit takes 5 to 15 % of moisture at -13 to 50 °C, not ${moisturePercent} % at ${storeC} °C`,
    );
  }
  return 10 ** (ke - cw * Math.log10(moisturePercent) - ch * storeC - cq * storeC * storeC);
}

/** Is a store one that the equation holds for? */
export const viabilityHolds = (moisturePercent: number, storeC: number): boolean =>
  moisturePercent >= VIABILITY_HOLDS.moistureFrom &&
  moisturePercent <= VIABILITY_HOLDS.moistureTo &&
  storeC >= VIABILITY_HOLDS.storeFromC &&
  storeC <= VIABILITY_HOLDS.storeToC;

/**
 * The share of seeds that still germinate after a time in store.
 *
 * @param share  The share that did at its beginning, 0 to 1; 0 and 1 stay as they are.
 * @param probits Time in store, in times of `daysPerProbit`; below 0 goes back in time.
 * @returns A share, 0 to 1.
 * @throws {ScienceError} `out-of-range` where the share is not within 0 to 1.
 *
 * Formula: v = Ki - p/σ, in probits, of which 50 % has none
 * Source: Ellis, Roberts (1980), as above.
 * @example agedShare(0.5, 1) // => 0.159
 */
export const agedShare = (share: number, probits: number): number => normalCdf(probit(share) - probits);
