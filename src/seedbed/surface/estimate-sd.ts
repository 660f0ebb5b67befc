import type { ResidualModel } from './residual-model.js';

/** Half width of the central 80 % of a normal distribution, in standard deviations. */
const WITHIN_80_PERCENT = 1.28;

/** Minimum of a variance, for the model's own steps and the probe's placement [K²]. */
const MIN_K2 = 0.02;

/**
 * Half width of the 80 % interval of a day's measured mean.
 *
 * @param sdK Standard deviation of the daily mean [K], from `probeUpdate`, >= 0.
 * @returns Half width [K].
 *
 * Validity: 78-87 % of days with 7 or more days of probe; without a probe most of the error is one constant of the
 * place, so that a place is nearly always in or nearly always out.
 * Source: the normal distribution's quantile of 0.9.
 * @example plusMinusK(1.3902) // => 1.779
 */
export const plusMinusK = (sdK: number): number => WITHIN_80_PERCENT * sdK;

/** The inverse: the standard deviation of an 80 % half width [K]. @example sdOfPlusMinusK(1.28) // => 1 */
export const sdOfPlusMinusK = (plusMinus: number): number => plusMinus / WITHIN_80_PERCENT;

/**
 * Shift of the daily means to either side that makes the resulting emergence dates an 80 % interval. The errors of
 * single days average out until then and are left out in part.
 *
 * @param model         The residuals that `sdK` came from.
 * @param sdK           Standard deviation of each daily mean [K]. Shape (n).
 * @param predictedDays Days from imbibition to the emergence predicted, > 0.
 * @returns Half widths [K] to run the progress with, warmer and colder. Shape (n).
 * @throws ScienceError never; a wait shorter than the fast errors last keeps them in full.
 *
 * Formula: v' = max(0.02, v - w (fast + noise)(1 - min(1, 2 fastDays / L))); half width = 1.28 sqrt(v'). Under cover
 * that is w 0.80 and 4.4 d; L the days predicted.
 * Validity: held 76-90 % of 99 stations' emergences by season; soil temperature's error only, not the seed's.
 * Source: our own study of the U.S. Climate Reference Network; on bare ground the same reasoning, not measured.
 */
export function emergencePlusMinusK(model: ResidualModel, sdK: ArrayLike<number>, predictedDays: number): Float64Array {
  const averagedOut = 1 - Math.min(1, (2 * model.fastDays) / predictedDays);
  const leftOutK2 = model.scale * (model.fastK2 + model.noiseK2) * averagedOut;
  return Float64Array.from(sdK, (sd) => plusMinusK(Math.sqrt(Math.max(MIN_K2, sd * sd - leftOutK2))));
}
