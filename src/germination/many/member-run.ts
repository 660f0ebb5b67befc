import { pieceAt, straightPieces } from '../curve/straight-pieces.js';
import {
  COHORTS,
  type CohortRun,
  coldLossOf,
  germinableCohorts,
  goalsOf,
  type InductionClock,
  inductionClock,
  LETHAL_C,
  LETHAL_HOURS,
  type Seed,
  tick,
} from '../run/cohorts.js';
import { medianSpeed } from '../run/hourly-progress.js';

/**
 * `cohortRun` for hundreds of soils of one sowing: one loop over the hours, which looks up nothing for seed that is up.
 *
 * @param seed How the seed answers to temperature.
 * @returns Runs the seed through hourly means since imbibition began [°C], shape (nHours), finite. What it gives is written over
 * by the next run.
 *
 * Formula: as `cohortRun`, with rate and share from the straight pieces of their curves, and the progress as `hourlyProgress`.
 */
export function memberRun(seed: Seed): (hourlyC: Float64Array) => CohortRun {
  const { fromC, rate, ratePerK, share, sharePerK } = straightPieces(seed.curve);
  const speed = medianSpeed(seed.sigmaLog10);
  const perHour = 1 / 24 / seed.timeFactor;
  const goal = goalsOf(seed.sigmaLog10);
  const upAtH = new Float64Array(COHORTS);
  const addedByGerminable = new Float64Array(COHORTS + 1);
  const heat = inductionClock();
  return (hourlyC) => {
    upAtH.fill(Infinity);
    addedByGerminable.fill(0);
    reset(heat);
    let piece = 0;
    let progress = 0;
    let up = 0;
    let lethalHours = 0;
    let killedAtH = Infinity;
    let everWarmEnough = false;
    for (let hour = 0; hour < hourlyC.length && up < COHORTS && killedAtH === Infinity; hour++) {
      const tempC = hourlyC[hour]!;
      piece = pieceAt(fromC, tempC, piece);
      const beyondC = tempC - fromC[piece]!;
      const hourRate = rate[piece]! + ratePerK[piece]! * beyondC;
      const hourShare = share[piece]! + sharePerK[piece]! * beyondC;
      const germinable = germinableCohorts(hourRate, hourShare);
      if (germinable > up) {
        everWarmEnough = true;
        const progressPerHour = hourRate * speed(hourShare) * perHour;
        progress += progressPerHour;
        addedByGerminable[germinable]! += progressPerHour;
        while (up < germinable && progress >= goal[up]!) {
          upAtH[up] = hour + Math.max(0, goal[up]! - (progress - progressPerHour)) / progressPerHour;
          up++;
          progress -= addedByGerminable[up]!;
        }
      }
      if (tempC > seed.hotThresholdC) tick(heat, true, up, germinable, hour);
      else heat.recoveryH++;
      if (tempC > LETHAL_C && ++lethalHours > LETHAL_HOURS) killedAtH = hour + 1;
    }
    return { upAtH, heatInducedAtH: heat.inducedAtH, coldLoss: coldLossOf(seed, hourlyC), killedAtH, everWarmEnough };
  };
}

function reset(clock: InductionClock): void {
  clock.hours.fill(0);
  clock.inducedAtH.fill(Infinity);
  clock.recoveryH = 0;
  clock.inducedFrom = COHORTS;
}
