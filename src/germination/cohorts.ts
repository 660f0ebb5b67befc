import { probit } from '../basics/probit.js';
import { type GerminationCurve, rateAt, shareAt } from './curve.js';

/** Seeds are followed in this many cohorts, from the fastest hundredth to the slowest. */
export const COHORTS = 100;

/** Held this long, counted as below, a cohort is at risk of not coming at all [h]. Our assumption, bracketed by
 * Nascimento, Huber, Cantliffe (2008, 2013) and Takeba, Matsubara (1976): a day of heat can cost seed, hours do not. */
export const BEARABLE_HOURS = 24;
/** How much of the held time an hour of relief takes away [h]. Our assumption. */
const RELIEF_PER_HOUR = 0.5;
/** Wet seed above this for this long in all is dead: Takeba, Matsubara (1976), lettuce; assumed for other crops. */
const LETHAL_C = 45;
const LETHAL_HOURS = 40;
/** Below this soil harms the wet seed of crops that bear no chill [°C]: for sweet corn the first day at 10 °C and
 * under (Manitoba corn growers' advice); assumed for the others. */
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
  readonly coldRiskAtH: Float64Array;
  /** When all seed not yet up had borne too many hours of killing heat. */
  readonly killedAtH: number;
  /** Could any cohort progress in any hour? */
  readonly everWarmEnough: boolean;
}

/** Φ⁻¹ of the middle of each cohort's hundredth. */
const cohortZ = Float64Array.from({ length: COHORTS }, (_, j) => probit((j + 0.5) / COHORTS));

/** How many cohorts can progress: the fast ones bear the widest range. The hair keeps 98/99 of 100 from rounding down. */
export const cohortsAwake = (rate: number, share: number): number =>
  rate > 0 ? Math.floor(COHORTS * share + 0.5 + 1e-9) : 0;

/**
 * When each hundredth of the seed comes up, hour by hour through changing temperature.
 *
 * A cohort progresses while the temperature lets its hundredth come up at all, at a pace set by the chart's rate and
 * its own speed; otherwise it pauses and keeps its progress. A clock counts the hours for which heat (or, where chill
 * harms, cold) holds it, and falls half as fast in relief.
 *
 * @param seed How the seed answers to temperature.
 * @param hourlyC Hourly mean temperature at the seed since wetting [°C]. Shape (nHours), finite.
 * @returns Hours since wetting at which each cohort comes up and passes into risk. Shape (100), fastest first.
 *
 * Formula: u_j = (j - 0.5)/100, z_j = Φ⁻¹(u_j); cohort j moves where u_j <= q(T) and rate(T) > 0, by
 * rate(T) 10^(σ (z_med(T) - z_j)) / timeFactor a day, z_med = Φ⁻¹(q(T)/2); it is up at 1, found inside the hour.
 * Validity: at constant temperature half of those that come are up on the chart's day, within 2 %. The threshold form
 * is published for onion (Brewster 2008, Eqns 4.8-4.9, after Ellis, Butcher 1988); that fast seeds are the heat-proof
 * ones is assumed for other crops and for cold. Never checked against emergence in beds.
 * Cost: O(nHours · 100) at worst.
 * @example cohortRun(onionSeed, 60 days at 15 °C).upAtH[49] / 24 // => 7.0
 */
export function cohortRun(seed: Seed, hourlyC: Float64Array): CohortRun {
  const upAtH = new Float64Array(COHORTS).fill(Infinity);
  const heatRiskAtH = new Float64Array(COHORTS).fill(Infinity);
  const coldRiskAtH = new Float64Array(COHORTS).fill(Infinity);
  const heatClockH = new Float64Array(COHORTS);
  const coldClockH = new Float64Array(COHORTS);
  const progress = new Float64Array(COHORTS);
  // A hair less than the exact goal: a sum that rounds just short of it at the end of an hour would lose the whole pause after it.
  const goal = cohortZ.map((z) => 10 ** (seed.spreadLog10 * z) * (1 - 1e-12));
  let up = 0;
  let lethalHours = 0;
  let killedAtH = Infinity;
  let everWarmEnough = false;

  for (let hour = 0; hour < hourlyC.length && up < COHORTS && killedAtH === Infinity; hour++) {
    const tempC = hourlyC[hour]!;
    const rate = rateAt(seed.curve, tempC);
    const share = shareAt(seed.curve, tempC);
    const awake = cohortsAwake(rate, share);
    if (awake > up) {
      everWarmEnough = true;
      const step = (rate * 10 ** (seed.spreadLog10 * probit(0.5 * share))) / 24 / seed.timeFactor;
      for (let j = up; j < awake; j++) {
        const before = progress[j]!;
        progress[j] = before + step;
        if (progress[j]! >= goal[j]!) {
          upAtH[j] = hour + Math.max(0, goal[j]! - before) / step;
          up = j + 1;
        }
      }
    }
    tickClocks(heatClockH, heatRiskAtH, up, tempC > seed.hotThresholdC ? awake : COHORTS, hour);
    if (seed.chillingSensitive) tickClocks(coldClockH, coldRiskAtH, up, tempC < CHILLING_C ? awake : COHORTS, hour);
    if (tempC > LETHAL_C && ++lethalHours > LETHAL_HOURS) killedAtH = hour + 1;
  }
  return { upAtH, heatRiskAtH, coldRiskAtH, killedAtH, everWarmEnough };
}

/** One hour of the held clocks: cohorts from `firstHeld` on are held, the others not up yet have relief. */
function tickClocks(
  clockH: Float64Array,
  riskAtH: Float64Array,
  firstWaiting: number,
  firstHeld: number,
  hour: number,
): void {
  // A slower cohort's clock is never behind a faster one's: where the slowest has none running, none runs.
  if (firstHeld === COHORTS && clockH[COHORTS - 1] === 0) return;
  for (let j = firstWaiting; j < COHORTS; j++) {
    if (j < firstHeld) {
      if (clockH[j]! > 0) clockH[j]! -= RELIEF_PER_HOUR;
    } else if (++clockH[j]! > BEARABLE_HOURS && riskAtH[j] === Infinity) {
      riskAtH[j] = hour + 1;
    }
  }
}
