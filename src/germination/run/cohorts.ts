import { probit } from '../../basics/numerics/probit.js';
import { type GerminationCurve, rateAt, shareAt } from '../curve/curve.js';
import { coldLoss } from './cold-loss.js';

/** Seeds are followed in this many cohorts, from the fastest hundredth to the slowest. */
export const COHORTS = 100;

/** Held this long, counted as below, a cohort is at risk of not coming at all [h]. Our assumption, bracketed by
 * Nascimento, Huber, Cantliffe (2008, 2013) and Takeba, Matsubara (1976): a day of heat can cost seed, hours do not. */
export const BEARABLE_HOURS = 24;
/** How much of the held time an hour of relief takes away [h]. Our assumption. */
export const RELIEF_PER_HOUR = 0.5;
/** Wet seed above this for this long in all is dead: Takeba, Matsubara (1976), lettuce; assumed for other crops. */
export const LETHAL_C = 45;
export const LETHAL_HOURS = 40;
/** Below this soil is cold to the seed of crops that bear no chill [°C]: for sweet corn the first day at 10 °C and under (Manitoba
 * corn growers' advice); assumed for the others. What it costs is told by `coldLoss`. */
export const CHILLING_C = 10;

/** How the seed of one sowing answers to temperature. */
export interface Seed {
  readonly curve: GerminationCurve;
  readonly hotThresholdC: number;
  readonly chillingSensitive: boolean;
  /** Standard deviation among seeds of log10 of the time to come up, 0.05 to 0.2. */
  readonly spreadLog10: number;
  /** How many times longer than the chart this grower's seed takes, above 0. */
  readonly timeFactor: number;
}

/** When each cohort came up and when it was first held too long, in hours since wetting; Infinity: never. */
export interface CohortRun {
  readonly upAtH: Float64Array;
  readonly heatRiskAtH: Float64Array;
  /** The share of the seed that cold took while it drank, 0 to 0.3; 0 where chill does not harm. */
  readonly coldLoss: number;
  /** When all seed not yet up had borne too many hours of killing heat. */
  readonly killedAtH: number;
  /** Could any cohort progress in any hour? */
  readonly everWarmEnough: boolean;
}

/** Φ⁻¹ of the middle of each cohort's hundredth. */
export const cohortZ = Float64Array.from({ length: COHORTS }, (_, j) => probit((j + 0.5) / COHORTS));

/** What each hour does for the seed, worked out as hours are reached. Both arrays have one length. */
export interface Pace {
  /** How many cohorts can progress, the fast ones first: they bear the widest range. */
  readonly awake: Uint8Array;
  /** By how much, of the way that a seed of middling speed has to make. */
  readonly step: Float64Array;
}

/** Stands in `awake` for an hour that is not worked out yet. */
export const NOT_YET = 255;

export const unknownPace = (nHours: number): Pace => ({
  awake: new Uint8Array(nHours).fill(NOT_YET),
  step: new Float64Array(nHours),
});

/** How many cohorts can progress. The hair keeps shares such as 98/99 from rounding down. */
export const cohortsAwake = (rate: number, share: number): number =>
  rate > 0 ? Math.floor(COHORTS * share + 0.5 + 1e-9) : 0;

function workOut({ awake, step }: Pace, hour: number, seed: Seed, tempC: number): void {
  const rate = rateAt(seed.curve, tempC);
  const share = shareAt(seed.curve, tempC);
  awake[hour] = cohortsAwake(rate, share);
  if (awake[hour]! > 0) step[hour] = (rate * 10 ** (seed.spreadLog10 * probit(0.5 * share))) / 24 / seed.timeFactor;
}

/**
 * When each hundredth of the seed comes up, hour by hour through changing temperature.
 *
 * A cohort progresses while the temperature lets its hundredth come up at all, at a pace set by the chart's rate and
 * its own speed; otherwise it pauses and keeps its progress. A clock counts the hours for which heat holds it, and falls
 * half as fast in relief. Where chill harms, cold of the first day takes a share (`coldLoss`).
 *
 * @param seed How the seed answers to temperature.
 * @param hourlyC Hourly mean temperature at the seed since wetting [°C]. Shape (nHours), finite.
 * @param pace    What of these hours is worked out already; the rest is added to it.
 * @returns Hours since wetting at which each cohort comes up and passes into risk. Shape (100), fastest first.
 *
 * Formula: u_j = (j - 0.5)/100, z_j = Φ⁻¹(u_j); cohort j moves where u_j <= q(T) and rate(T) > 0, by
 * rate(T) 10^(σ (z_med(T) - z_j)) / timeFactor a day, z_med = Φ⁻¹(q(T)/2); it is up at 1, found inside the hour.
 * Validity: at constant temperature half of those that come are up on the chart's day, within 2 %. The threshold form
 * is published for onion (Brewster 2008, Eqns 4.8-4.9, after Ellis, Butcher 1988); that fast seeds are the heat-proof
 * ones is assumed for other crops and for cold. Never checked against emergence in beds.
 * Cost: O(nHours) and, for hours in which seed is held, up to 100 steps each until all of it is at risk.
 * @example cohortRun(onionSeed, 60 days at 15 °C).upAtH[49] / 24 // => 7.0
 */
export function cohortRun(seed: Seed, hourlyC: Float64Array, pace: Pace = unknownPace(hourlyC.length)): CohortRun {
  const upAtH = new Float64Array(COHORTS).fill(Infinity);
  const heat = heldClock();
  const goal = goalsOf(seed.spreadLog10);
  // Cohorts come up in order, so only the next one's progress is kept. By how many were awake, what each hour added:
  // the one after it has made the same way, less the hours in which it alone was not awake.
  const addedByAwake = new Float64Array(COHORTS + 1);
  let progress = 0;
  let up = 0;
  let lethalHours = 0;
  let killedAtH = Infinity;
  let everWarmEnough = false;

  for (let hour = 0; hour < hourlyC.length && up < COHORTS && killedAtH === Infinity; hour++) {
    const tempC = hourlyC[hour]!;
    if (pace.awake[hour] === NOT_YET) workOut(pace, hour, seed, tempC);
    const awake = pace.awake[hour]!;
    if (awake > up) {
      everWarmEnough = true;
      const step = pace.step[hour]!;
      progress += step;
      addedByAwake[awake]! += step;
      while (up < awake && progress >= goal[up]!) {
        upAtH[up] = hour + Math.max(0, goal[up]! - (progress - step)) / step;
        up++;
        progress -= addedByAwake[up]!;
      }
    }
    tick(heat, tempC > seed.hotThresholdC, up, awake, hour);
    if (tempC > LETHAL_C && ++lethalHours > LETHAL_HOURS) killedAtH = hour + 1;
  }
  return { upAtH, heatRiskAtH: heat.riskAtH, coldLoss: coldLossOf(seed, hourlyC), killedAtH, everWarmEnough };
}

/** What cold takes of a sowing. */
export const coldLossOf = ({ chillingSensitive }: Seed, hourlyC: Float64Array): number =>
  chillingSensitive ? coldLoss(hourlyC) : 0;

/** How far each cohort has to go; kept for the last spread asked. */
export function goalsOf(spreadLog10: number): Float64Array {
  if (spreadLog10 === lastGoals.spreadLog10) return lastGoals.goal;
  // A hair less than the exact goal: a sum that rounds just short of it at the end of an hour would lose the whole pause after it.
  lastGoals = { spreadLog10, goal: cohortZ.map((z) => 10 ** (spreadLog10 * z) * (1 - 1e-12)) };
  return lastGoals.goal;
}

let lastGoals = { spreadLog10: NaN, goal: new Float64Array() };

/** How long each cohort has been held, relief taken off. A slower cohort's clock is never behind a faster one's. */
export interface HeldClock {
  readonly hours: Float64Array;
  /** Hours of relief for all, not yet taken off. */
  reliefH: number;
  /** From this cohort on all are at risk, and need no clock any more. */
  atRiskFrom: number;
  readonly riskAtH: Float64Array;
}

export const heldClock = (): HeldClock => ({
  hours: new Float64Array(COHORTS),
  reliefH: 0,
  atRiskFrom: COHORTS,
  riskAtH: new Float64Array(COHORTS).fill(Infinity),
});

/** One hour of a held clock: in a harmful one the waiting cohorts that are not awake are held, the others have relief. */
export function tick(clock: HeldClock, isHarmful: boolean, firstWaiting: number, awake: number, hour: number): void {
  if (!isHarmful) {
    clock.reliefH++;
    return;
  }
  const { hours, riskAtH } = clock;
  const relief = RELIEF_PER_HOUR * clock.reliefH;
  clock.reliefH = 0;
  for (let j = firstWaiting; j < clock.atRiskFrom; j++) {
    const held = Math.max(0, hours[j]! - relief);
    hours[j] = j < awake ? Math.max(0, held - RELIEF_PER_HOUR) : held + 1;
  }
  while (clock.atRiskFrom > firstWaiting && hours[clock.atRiskFrom - 1]! > BEARABLE_HOURS)
    riskAtH[--clock.atRiskFrom] = hour + 1;
}
