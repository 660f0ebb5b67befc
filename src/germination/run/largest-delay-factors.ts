import { COHORTS, cohortZ, type Seed } from './cohorts.js';
import { hourlyProgress } from './hourly-progress.js';

/**
 * The largest delay factor with which each hundredth of the seed still emerges by some hours: one run answers for all factors,
 * as a cohort's progress falls in proportion to them.
 *
 * @param seed    How the seed answers to temperature; its own time factor is left aside.
 * @param hourlyC Hourly mean temperature at the seed since imbibition began [°C]. Shape (nHours), finite.
 * @param atH     Hours since imbibition began, rising, each 0 to nHours. Shape (nAt).
 * @returns The largest time factor with which each cohort is up by each of `atH`, the fastest cohort first, never rising
 * within a row; 0: up with none. Shape (nAt x 100). Heat that kills is left aside.
 *
 * Formula: as `cohortRun`: progress of cohort j over 10^(σ z_j).
 * @example shareUp(largestDelayFactors(onionSeed, 30 days at 15 °C, [14 * 24]), 2) // => 0.5, onion's 7 days taken twice
 */
export function largestDelayFactors(seed: Seed, hourlyC: Float64Array, atH: readonly number[]): Float64Array {
  const { germinable, progressPerHour } = hourlyProgress({ ...seed, timeFactor: 1 }, hourlyC, 0, hourlyC.length);
  const goal = cohortZ.map((z) => 10 ** (seed.sigmaLog10 * z));
  const addedByGerminable = new Float64Array(COHORTS + 1);
  const reach = new Float64Array(atH.length * COHORTS);
  let hour = 0;
  atH.forEach((toH, at) => {
    for (; hour + 1 <= toH; hour++) addedByGerminable[germinable[hour]!]! += progressPerHour[hour]!;
    const partly = hour < hourlyC.length ? (toH - hour) * progressPerHour[hour]! : 0;
    let progress = 0;
    for (let j = COHORTS - 1; j >= 0; j--) {
      progress += addedByGerminable[j + 1]!;
      const own = progress + (hour < hourlyC.length && germinable[hour]! > j ? partly : 0);
      reach[at * COHORTS + j] = own / goal[j]!;
    }
  });
  return reach;
}

/**
 * The share of the seed that is up with a time factor, from the reach of the cohorts.
 *
 * @param reach      Rows of `largestDelayFactors`. Shape (n x 100), never rising within a row.
 * @param timeFactor Above 0.
 * @param from       Where in it the row begins.
 * @returns 0 to 1; between two cohorts a straight line.
 * @example shareUp([2, 1, 0, ...], 1.5) // => 0.01, halfway from the first half of a hundredth to the second
 */
export function shareUp(reach: ArrayLike<number>, timeFactor: number, from = 0): number {
  let up = 0;
  let beyond = COHORTS;
  while (up < beyond) {
    const middle = (up + beyond) >> 1;
    if (reach[from + middle]! >= timeFactor) up = middle + 1;
    else beyond = middle;
  }
  if (up === 0) return 0;
  if (up === COHORTS) return 1;
  const [last, next] = [reach[from + up - 1]!, reach[from + up]!];
  return (up - 0.5 + (last - timeFactor) / (last - next)) / COHORTS;
}
