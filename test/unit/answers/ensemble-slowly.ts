import { type Ensemble, NORMAL_IN_THREE } from '../../../src/answers/ahead/ensemble.js';
import { hazenQuantile } from '../../../src/basics/numerics/hazen-quantile.js';
import { COHORTS, type CohortRun, cohortRun, type Seed } from '../../../src/germination/run/cohorts.js';
import { hourlyProgress } from '../../../src/germination/run/hourly-progress.js';
import { countUpBy } from '../../../src/germination/run/outcome.js';
import { sdOfPlusMinusK } from '../../../src/seedbed/surface/estimate-sd.js';

/**
 * `ensembleOf` as plainly as it can be written.
 *
 * @param seed    The seed.
 * @param members  Hourly means since the wetting [°C]. Shape (nHours) each; those with an unknown hour are left out.
 * @param uncertaintyK  How far each hour may be off for want of knowing the soil: half the width of the middle 80 % [K].
 * @param share   How much of that doubt is laid over the members, 0 to 1: `uncertaintyShare`.
 * @returns The middle and the spans; null where no member is known to the end.
 */
export function ensembleSlowly(
  seed: Seed,
  members: readonly Float64Array[],
  uncertaintyK: Float64Array,
  share = 1,
): Ensemble | null {
  const known = members.filter((member) => !member.some(Number.isNaN));
  if (known.length === 0) return null;
  const nHours = known[0]!.length;
  const hourlyC = new Float64Array(nHours * known.length * NORMAL_IN_THREE.length);
  let at = 0;
  for (const doubt of NORMAL_IN_THREE) {
    for (const member of known) {
      for (let hour = 0; hour < nHours; hour++)
        hourlyC[at++] = member[hour]! + doubt * share * sdOfPlusMinusK(uncertaintyK[hour]!);
    }
  }
  const hourly = hourlyProgress(seed, hourlyC, 0, hourlyC.length);
  const runs: CohortRun[] = [];
  for (let from = 0; from < hourlyC.length; from += nHours) {
    const own = {
      germinable: hourly.germinable.subarray(from, from + nHours),
      progressPerHour: hourly.progressPerHour.subarray(from, from + nHours),
    };
    runs.push(cohortRun(seed, hourlyC.subarray(from, from + nHours), own));
  }
  const cohorts = Array.from({ length: COHORTS }, (_, j) => Float64Array.from(runs, (run) => run.upAtH[j]!).sort());
  const middle = {
    upAtH: Float64Array.from(cohorts, (upAtH) => hazenQuantile(upAtH, 0.5)),
    heatInducedAtH: majority(runs, 'heatInducedAtH'),
    coldLoss: hazenQuantile(Float64Array.from(runs, (run) => run.coldLoss).sort(), 0.5),
    killedAtH: hazenQuantile(Float64Array.from(runs, (run) => run.killedAtH).sort(), 0.5),
    everWarmEnough: runs.some((run) => run.everWarmEnough),
  };
  return {
    middle,
    span(eventH) {
      const upAtH = cohorts[Math.max(0, countUpBy(middle, eventH) - 1)]!;
      return { fromH: hazenQuantile(upAtH, 0.1), toH: hazenQuantile(upAtH, 0.9) };
    },
  };
}

/** When a cohort passes into risk in the middle of the members in which it does so before it is up; Infinity where those are the fewer. */
function majority(runs: readonly CohortRun[], which: 'heatInducedAtH'): Float64Array {
  return Float64Array.from({ length: COHORTS }, (_, j) => {
    const risky = runs.flatMap((run) => (run[which][j]! <= run.upAtH[j]! ? run[which][j]! : [])).sort((a, b) => a - b);
    return 2 * risky.length > runs.length ? hazenQuantile(risky, 0.5) : Infinity;
  });
}
