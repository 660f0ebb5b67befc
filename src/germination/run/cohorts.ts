import { probit } from '../../basics/numerics/probit.js';
import { type GerminationCurve, rateAt, shareAt } from '../curve/curve.js';
import { coldLoss } from './cold-loss.js';

/** Seeds are followed in this many cohorts, from the fastest hundredth to the slowest. */
export const COHORTS = 100;

/** Induction hours: a cohort inhibited this long, counted as below, may enter secondary dormancy [h]. Our assumption, bracketed by
 * Nascimento, Huber, Cantliffe (2008, 2013) and Takeba, Matsubara (1976): a day of heat can cost seed, hours do not. */
export const INDUCTION_HOURS = 24;
/** Recovery rate: inhibited time that one hour without harm takes away [h]. Our assumption. */
export const RECOVERY_PER_HOUR = 0.5;
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
  readonly sigmaLog10: number;
  /** How many times longer than the chart this grower's seed takes, above 0. */
  readonly timeFactor: number;
}

/** When each cohort emerged and when its secondary dormancy was induced, in hours since imbibition began; Infinity: never. */
export interface CohortRun {
  readonly upAtH: Float64Array;
  readonly heatInducedAtH: Float64Array;
  /** The share of the seed that cold took while it drank, 0 to 0.3; 0 where chill does not harm. */
  readonly coldLoss: number;
  /** When all seed not yet up had borne too many hours of killing heat. */
  readonly killedAtH: number;
  /** Could any cohort progress in any hour? */
  readonly everWarmEnough: boolean;
}

/** Φ⁻¹ of the middle of each cohort's hundredth. */
export const cohortZ = Float64Array.from({ length: COHORTS }, (_, j) => probit((j + 0.5) / COHORTS));

/** The seed's progress in each hour, worked out as hours are reached. Both arrays have one length. */
export interface HourlyProgress {
  /** The germinable cohorts: how many can progress, the fast ones first, as they bear the widest range. */
  readonly germinable: Uint8Array;
  /** Progress of the germinable seed, as a share of the median seed's thermal time. */
  readonly progressPerHour: Float64Array;
}

/** Stands in `germinable` for an hour that is not worked out yet. */
export const NOT_YET = 255;

export const unknownProgress = (nHours: number): HourlyProgress => ({
  germinable: new Uint8Array(nHours).fill(NOT_YET),
  progressPerHour: new Float64Array(nHours),
});

/** The germinable cohorts. The 1e-9 keeps shares such as 98/99 from rounding down. */
export const germinableCohorts = (rate: number, share: number): number =>
  rate > 0 ? Math.floor(COHORTS * share + 0.5 + 1e-9) : 0;

function workOut({ germinable, progressPerHour }: HourlyProgress, hour: number, seed: Seed, tempC: number): void {
  const rate = rateAt(seed.curve, tempC);
  const share = shareAt(seed.curve, tempC);
  germinable[hour] = germinableCohorts(rate, share);
  if (germinable[hour]! > 0)
    progressPerHour[hour] = (rate * 10 ** (seed.sigmaLog10 * probit(0.5 * share))) / 24 / seed.timeFactor;
}

/**
 * When each hundredth of the seed comes up, hour by hour through changing temperature.
 *
 * A cohort progresses while the temperature lets its hundredth come up at all, at a speed set by the chart's rate and
 * its own speed; otherwise it pauses and keeps its progress. A clock counts the hours for which heat inhibits it, and falls
 * half as fast in recovery. Where chill harms, cold of the first day takes a share (`coldLoss`).
 *
 * @param seed How the seed answers to temperature.
 * @param hourlyC Hourly mean temperature at the seed since imbibition began [°C]. Shape (nHours), finite.
 * @param hourly  Progress of these hours as far as it is known; the function fills in the rest.
 * @returns Hours since imbibition began at which each cohort emerges and enters secondary dormancy. Shape (100), fastest first.
 *
 * Formula: u_j = (j - 0.5)/100, z_j = Φ⁻¹(u_j); cohort j moves where u_j <= q(T) and rate(T) > 0, by
 * rate(T) 10^(σ (z_med(T) - z_j)) / timeFactor a day, z_med = Φ⁻¹(q(T)/2); it is up at 1, found inside the hour.
 * Validity: at constant temperature half of those that come are up on the chart's day, within 2 %. The threshold form
 * is published for onion (Brewster 2008, Eqns 4.8-4.9, after Ellis, Butcher 1988); that fast seeds are the heat-proof
 * ones is assumed for other crops and for cold. Never checked against emergence in beds.
 * Cost: O(nHours) and, for hours in which seed is inhibited, up to 100 steps each until all of it is induced.
 * @example cohortRun(onionSeed, 60 days at 15 °C).upAtH[49] / 24 // => 7.0
 */
export function cohortRun(
  seed: Seed,
  hourlyC: Float64Array,
  hourly: HourlyProgress = unknownProgress(hourlyC.length),
): CohortRun {
  const upAtH = new Float64Array(COHORTS).fill(Infinity);
  const heat = inductionClock();
  const goal = goalsOf(seed.sigmaLog10);
  // Cohorts emerge in order, so only the next one's progress is kept. The sums by number of germinable cohorts give the rest:
  // the cohort after it has made the same progress, less the hours in which it alone was not germinable.
  const addedByGerminable = new Float64Array(COHORTS + 1);
  let progress = 0;
  let up = 0;
  let lethalHours = 0;
  let killedAtH = Infinity;
  let everWarmEnough = false;

  for (let hour = 0; hour < hourlyC.length && up < COHORTS && killedAtH === Infinity; hour++) {
    const tempC = hourlyC[hour]!;
    if (hourly.germinable[hour] === NOT_YET) workOut(hourly, hour, seed, tempC);
    const germinable = hourly.germinable[hour]!;
    if (germinable > up) {
      everWarmEnough = true;
      const progressPerHour = hourly.progressPerHour[hour]!;
      progress += progressPerHour;
      addedByGerminable[germinable]! += progressPerHour;
      while (up < germinable && progress >= goal[up]!) {
        upAtH[up] = hour + Math.max(0, goal[up]! - (progress - progressPerHour)) / progressPerHour;
        up++;
        progress -= addedByGerminable[up]!;
      }
    }
    tick(heat, tempC > seed.hotThresholdC, up, germinable, hour);
    if (tempC > LETHAL_C && ++lethalHours > LETHAL_HOURS) killedAtH = hour + 1;
  }
  return { upAtH, heatInducedAtH: heat.inducedAtH, coldLoss: coldLossOf(seed, hourlyC), killedAtH, everWarmEnough };
}

/** The share of a sowing lost to cold. */
export const coldLossOf = ({ chillingSensitive }: Seed, hourlyC: Float64Array): number =>
  chillingSensitive ? coldLoss(hourlyC) : 0;

/** The progress at which each cohort emerges; the answer for the last sigma is kept. */
export function goalsOf(sigmaLog10: number): Float64Array {
  if (sigmaLog10 === lastGoals.sigmaLog10) return lastGoals.goal;
  // Lowered by 1e-12 so that a rounding shortfall cannot postpone emergence past the next pause.
  lastGoals = { sigmaLog10, goal: cohortZ.map((z) => 10 ** (sigmaLog10 * z) * (1 - 1e-12)) };
  return lastGoals.goal;
}

let lastGoals = { sigmaLog10: NaN, goal: new Float64Array() };

/** Hours that each cohort has been inhibited, less recovery. A slower cohort's clock is never behind a faster one's. */
export interface InductionClock {
  readonly hours: Float64Array;
  /** Hours of recovery for all cohorts, not yet subtracted. */
  recoveryH: number;
  /** From this cohort on all are induced, and need no clock any more. */
  inducedFrom: number;
  readonly inducedAtH: Float64Array;
}

export const inductionClock = (): InductionClock => ({
  hours: new Float64Array(COHORTS),
  recoveryH: 0,
  inducedFrom: COHORTS,
  inducedAtH: new Float64Array(COHORTS).fill(Infinity),
});

/** Advances the clock by an hour: a harmful one inhibits the waiting cohorts that are not germinable; the others recover. */
export function tick(
  clock: InductionClock,
  isHarmful: boolean,
  firstWaiting: number,
  germinable: number,
  hour: number,
): void {
  if (!isHarmful) {
    clock.recoveryH++;
    return;
  }
  const { hours, inducedAtH } = clock;
  const recovered = RECOVERY_PER_HOUR * clock.recoveryH;
  clock.recoveryH = 0;
  for (let j = firstWaiting; j < clock.inducedFrom; j++) {
    const inhibited = Math.max(0, hours[j]! - recovered);
    hours[j] = j < germinable ? Math.max(0, inhibited - RECOVERY_PER_HOUR) : inhibited + 1;
  }
  while (clock.inducedFrom > firstWaiting && hours[clock.inducedFrom - 1]! > INDUCTION_HOURS)
    inducedAtH[--clock.inducedFrom] = hour + 1;
}
