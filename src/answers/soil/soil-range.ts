import { type CohortRun, cohortRun, type Seed } from '../../germination/run/cohorts.js';
import { countUpBy, type Outcome } from '../../germination/run/outcome.js';
import { emergencePlusMinusK } from '../../seedbed/surface/estimate-sd.js';
import type { ResidualModel } from '../../seedbed/surface/residual-model.js';

/** Between which hours an event lies if the soil is warmer or colder than estimated; Infinity: not by the count. */
export interface HourSpan {
  readonly fromH: number;
  readonly toH: number;
}

/** Doubt smaller than this moves no date [K]. */
const NEGLIGIBLE_K = 0.35;
/** Single days' errors, where no model of the bed tells them apart: none of them is taken to average out. */
const UNKNOWN_RESIDUALS: ResidualModel = {
  scale: 1,
  siteK2: [0, 0, 0],
  fastK2: 0,
  fastDays: 1,
  slowK2: 0,
  slowDays: 1,
  noiseK2: 0,
};

/**
 * How far to shift each hour to either side for the middle 80 % of what the soil may be; not where it is well known.
 *
 * @param residuals How the errors of single days average out; null: the bed has no model.
 * @param sdK       How far each hour's day may be off [K]. Shape (n).
 * @param eventH    Over how many hours they average out [h].
 * @returns Half widths [K]. Shape (n).
 */
export function soilUncertaintyK(residuals: ResidualModel | null, sdK: Float64Array, eventH: number): Float64Array {
  const uncertaintyK = emergencePlusMinusK(residuals ?? UNKNOWN_RESIDUALS, sdK, eventH / 24);
  return uncertaintyK.map((doubt, hour) => (sdK[hour]! < NEGLIGIBLE_K ? 0 : doubt));
}

/**
 * How far the estimate of the soil leaves emergence open: the middle 80 % of first, half and most.
 *
 * The sowing is run again in soil as much warmer, and as much colder, as the estimate may be off.
 *
 * @param seed         The seed.
 * @param hourlyC      Hourly means at the seed from the wetting to the count [°C].
 * @param sdK          How far each hour's day may be off [K].
 * @param residuals    How the errors of single days average out; null: the bed has no model.
 * @param run          What the estimate itself gives, cohort by cohort.
 * @param outcome      And by the count.
 * @returns For each event its span; null where the soil is known well enough, or the event does not come.
 */
export function soilRanges(
  seed: Seed,
  hourlyC: Float64Array,
  sdK: Float64Array,
  residuals: ResidualModel | null,
  run: CohortRun,
  outcome: Outcome,
): { readonly first: HourSpan; readonly half: HourSpan; readonly most: HourSpan } | null {
  if (outcome.halfH === null || sdK.subarray(0, Math.ceil(outcome.halfH)).every((sd) => sd < NEGLIGIBLE_K)) return null;
  const shiftK = soilUncertaintyK(residuals, sdK, outcome.halfH);
  const shifted = (sign: 1 | -1): CohortRun =>
    cohortRun(
      seed,
      Float64Array.from(hourlyC, (tempC, hour) => tempC + sign * shiftK[hour]!),
    );
  const runs = [run, shifted(1), shifted(-1)];
  // The same seedlings are followed in all three: how many come at all is another question.
  const span = (eventH: number): HourSpan => {
    const last = countUpBy(run, eventH) - 1;
    const all = runs.map(({ upAtH }) => upAtH[last]!);
    return { fromH: Math.min(...all), toH: Math.max(...all) };
  };
  return { first: span(outcome.firstH!), half: span(outcome.halfH), most: span(outcome.mostH!) };
}
