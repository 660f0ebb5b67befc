import { hazenQuantile } from '../../basics/numerics/hazen-quantile.js';
import { memberRun } from '../../germination/many/member-run.js';
import { COHORTS, type CohortRun, type Seed } from '../../germination/run/cohorts.js';
import { countUpBy } from '../../germination/run/outcome.js';
import { sdOfPlusMinusK } from '../../seedbed/surface/estimate-sd.js';
import type { HourSpan } from '../soil/soil-range.js';

/** A sowing in many possible soils: what it does in the middle of them, and how far they part. */
export interface Ensemble {
  /** Each cohort as in the middle of all members. */
  readonly middle: CohortRun;
  /** The middle 80 % of when an event of some sowing comes; Infinity: not by the count. */
  span(eventH: number): HourSpan;
}

/** Three values that stand for a normal distribution: its mean, and as far to either side as keeps its spread. */
export const NORMAL_IN_THREE = [0, -1.2247, 1.2247] as const;
/** So much of the soil's doubt is laid over the years, by whether a probe has told of the bed. What the years differ in is in
 * part the same doubt, and what a probe leaves open is estimated widely. Chosen so that the ranges held about 0.8 of the
 * truths at 13 stations of the U.S. Climate Reference Network, one number for all of them. */
export const uncertaintyShare = (hasProbe: boolean): number => (hasProbe ? 0.75 : 1);

/**
 * Runs a sowing in the weather of every past year, each as it is and as much colder and warmer as the soil's estimate leaves open.
 *
 * @param seed    The seed.
 * @param yearsC  Hourly means since imbibition began [°C], a past year each. Shape (nHours) each; those with an unknown hour are left out.
 * @param uncertaintyK 80 % half-width of the soil's estimate in each hour [K].
 * @param share   Share of that uncertainty that is added to the years, 0 to 1: `uncertaintyShare`.
 * @returns The middle and the spans; null where no year is known to the end.
 */
export function ensembleOf(
  seed: Seed,
  yearsC: readonly Float64Array[],
  uncertaintyK: Float64Array,
  share = 1,
): Ensemble | null {
  const known = yearsC.filter(isKnown);
  if (known.length === 0) return null;
  const nHours = known[0]!.length;
  const sdK = uncertaintyK.map((one) => share * sdOfPlusMinusK(one));
  const members = known.length * NORMAL_IN_THREE.length;
  const hourlyC = new Float64Array(nHours);
  const runOf = memberRun(seed);
  // Indexed by cohort, then member.
  const upAtH = new Float64Array(COHORTS * members);
  const heatInducedAtH = new Float64Array(COHORTS * members);
  const coldLoss = new Float64Array(members);
  const killedAtH = new Float64Array(members);
  let everWarmEnough = false;
  let member = 0;
  for (const doubt of NORMAL_IN_THREE) {
    for (const yearC of known) {
      for (let hour = 0; hour < nHours; hour++) hourlyC[hour] = yearC[hour]! + doubt * sdK[hour]!;
      const run = runOf(hourlyC);
      for (let j = 0, at = member; j < COHORTS; j++, at += members) {
        upAtH[at] = run.upAtH[j]!;
        heatInducedAtH[at] = run.heatInducedAtH[j]!;
      }
      killedAtH[member] = run.killedAtH;
      coldLoss[member] = run.coldLoss;
      everWarmEnough ||= run.everWarmEnough;
      member++;
    }
  }
  const ofCohort = (all: Float64Array, j: number): Float64Array => all.subarray(j * members, (j + 1) * members);
  const majority = (inducedAtH: Float64Array): Float64Array =>
    Float64Array.from({ length: COHORTS }, (_, j) => majorityOf(ofCohort(inducedAtH, j), ofCohort(upAtH, j)));
  const risks = { heatInducedAtH: majority(heatInducedAtH), coldLoss: hazenQuantile(coldLoss.sort(), 0.5) };
  // Sorted only now: risks and times are one member's.
  const cohorts = Array.from({ length: COHORTS }, (_, j) => ofCohort(upAtH, j).sort());
  const middle = {
    upAtH: Float64Array.from({ length: COHORTS }, (_, j) => hazenQuantile(cohorts[j]!, 0.5)),
    ...risks,
    killedAtH: hazenQuantile(killedAtH.sort(), 0.5),
    everWarmEnough,
  };
  return {
    middle,
    span(eventH) {
      const allH = cohorts[Math.max(0, countUpBy(middle, eventH) - 1)]!;
      return { fromH: hazenQuantile(allH, 0.1), toH: hazenQuantile(allH, 0.9) };
    },
  };
}

/** True if every hour is known. A sum is NaN if one hour is, which is the fastest test of millions. */
function isKnown(yearC: Float64Array): boolean {
  let sum = 0;
  for (let hour = 0; hour < yearC.length; hour++) sum += yearC[hour]!;
  return !Number.isNaN(sum);
}

/** When a cohort passes into risk in the middle of the members in which it does so before it is up; Infinity where those are the fewer. */
function majorityOf(inducedAtH: Float64Array, upAtH: Float64Array): number {
  const risky = new Float64Array(inducedAtH.length);
  let count = 0;
  for (let member = 0; member < inducedAtH.length; member++) {
    // Neither up nor ever at risk is both at Infinity, and counts as at risk.
    if (inducedAtH[member]! <= upAtH[member]!) risky[count++] = inducedAtH[member]!;
  }
  return 2 * count > inducedAtH.length ? hazenQuantile(risky.subarray(0, count).sort(), 0.5) : Infinity;
}
