import { pieceAt, straightPieces } from '../curve/straight-pieces.js';
import {
  COHORTS,
  type CohortRun,
  cohortsAwake,
  coldLossOf,
  goalsOf,
  type HeldClock,
  heldClock,
  LETHAL_C,
  LETHAL_HOURS,
  type Seed,
  tick,
} from '../run/cohorts.js';
import { medianSpeed } from '../run/hourly-pace.js';

/**
 * `cohortRun` for hundreds of soils of one sowing: one loop over the hours, in which nothing is looked up for seed that is up.
 *
 * @param seed How the seed answers to temperature.
 * @returns Runs the seed through hourly means since the wetting [°C], shape (nHours), finite. What it gives is written over
 * by the next run.
 *
 * Formula: as `cohortRun`, with rate and share from the straight pieces of their curves, and the pace as `hourlyPace`.
 */
export function memberRun(seed: Seed): (hourlyC: Float64Array) => CohortRun {
  const { fromC, rate, ratePerK, share, sharePerK } = straightPieces(seed.curve);
  const speed = medianSpeed(seed.spreadLog10);
  const perHour = 1 / 24 / seed.timeFactor;
  const goal = goalsOf(seed.spreadLog10);
  const upAtH = new Float64Array(COHORTS);
  const addedByAwake = new Float64Array(COHORTS + 1);
  const heat = heldClock();
  return (hourlyC) => {
    upAtH.fill(Infinity);
    addedByAwake.fill(0);
    setBack(heat);
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
      const awake = cohortsAwake(hourRate, hourShare);
      if (awake > up) {
        everWarmEnough = true;
        const step = hourRate * speed(hourShare) * perHour;
        progress += step;
        addedByAwake[awake]! += step;
        while (up < awake && progress >= goal[up]!) {
          upAtH[up] = hour + Math.max(0, goal[up]! - (progress - step)) / step;
          up++;
          progress -= addedByAwake[up]!;
        }
      }
      if (tempC > seed.hotThresholdC) tick(heat, true, up, awake, hour);
      else heat.reliefH++;
      if (tempC > LETHAL_C && ++lethalHours > LETHAL_HOURS) killedAtH = hour + 1;
    }
    return { upAtH, heatRiskAtH: heat.riskAtH, coldLoss: coldLossOf(seed, hourlyC), killedAtH, everWarmEnough };
  };
}

function setBack(clock: HeldClock): void {
  clock.hours.fill(0);
  clock.riskAtH.fill(Infinity);
  clock.reliefH = 0;
  clock.atRiskFrom = COHORTS;
}
