import { logistic } from '../../basics/numerics/logit.js';
import { COHORTS } from '../../germination/run/cohorts.js';
import { shareUp } from '../../germination/run/largest-delay-factors.js';
import { contaminatedNormal } from './contaminated-normal.js';
import { logOddsAt, logOddsOfShares, type SeenCount } from './count-odds.js';
import type { Normal, Prior } from './prior.js';

/** The counts of one sowing, and how far its seed can have come by each. */
export interface SeenSowing {
  readonly counts: readonly SeenCount[];
  /** Rows of `largestDelayFactors` at the counts' hours, for each spread of `SPREADS`. */
  readonly reaches: readonly Float64Array[];
  /** Share of the seed that comes where everything suits it, 0 to 1. */
  readonly viable: number;
}

/** Seed of a lot may be more alike or more unlike than the crop's: so many times its spread, each as likely as `odds`. */
export const SPREADS = [
  { times: 0.75, odds: 0.3 },
  { times: 1, odds: 0.4 },
  { times: 1.3, odds: 0.3 },
] as const;

/** The grid: so many points of either factor, so many standard deviations to either side of its middle. */
const POINTS = 61;
const REACH_SD = 4.5;

/** Posterior of a sowing. */
export interface Posterior {
  readonly dead: number;
  /** Of a sowing that lives: points of the time factor's logarithm and of the stand factor's logit, and the odds of each pair. */
  readonly logTime: Float64Array;
  readonly logitStand: Float64Array;
  /** Shape (nTime x nStand), adding up to 1. */
  readonly odds: Float64Array;
}

/**
 * What a sowing's counts say of its time factor and its stand, and whether it lives at all.
 *
 * Between counts nothing is handed on but the two factors, and how unlike the seeds are. What each count says is
 * `logOddsOfShares`.
 *
 * @param belief What is supposed before the counts.
 * @param seen   The counts, in the order of their reaches.
 * @returns The posterior, on a grid about the belief's.
 *
 * Source: Bayes' rule on a grid; the mixture for wild counts as in Box, Tiao (1968), A Bayesian approach to some outlier
 * problems. Biometrika 55. The numbers in it are our assumptions, judged on invented beds (test/accuracy/counts.test.ts).
 * Cost: 61 x 61 x 3 look-ups a count.
 */
export function countPosterior({ logTime, logitStand, deadShare }: Prior, seen: SeenSowing): Posterior {
  const times = pointsAbout(logTime);
  const logits = pointsAbout(logitStand);
  const rootsOfStands = logits.map((value) => Math.sqrt(logistic(value)));
  const tables = seen.counts.map((count) => logOddsOfShares(count, seen.viable));
  // Logarithms are added, because the product of hundreds of likelihoods underflows.
  const logs = SPREADS.map(({ odds }, spread) => {
    const sums = new Float64Array(POINTS * POINTS);
    for (let i = 0; i < POINTS; i++) {
      for (let s = 0; s < POINTS; s++) sums[i * POINTS + s] = Math.log(odds) + logPrior[i]! + logPrior[s]!;
      tables.forEach((table, k) => {
        const up = seen.viable * shareUp(seen.reaches[spread]!, Math.exp(times[i]!), k * COHORTS);
        const rootOfUp = Math.sqrt(up);
        for (let s = 0; s < POINTS; s++) sums[i * POINTS + s]! += logOddsAt(table, rootOfUp * rootsOfStands[s]!);
      });
    }
    return sums;
  });
  const highest = logs.reduce((high, some) => some.reduce((a, b) => Math.max(a, b), high), -Infinity);
  const odds = new Float64Array(POINTS * POINTS).map((_, i) =>
    logs.reduce((sum, some) => sum + Math.exp(some[i]! - highest), 0),
  );
  const total = odds.reduce((sum, one) => sum + one, 0);
  const alive = Math.log((1 - deadShare) * total) + highest;
  const none = tables.reduce((sum, table) => sum + table[0]!, Math.log(deadShare * priorTotal));
  return {
    dead: 1 / (1 + Math.exp(alive - none)),
    logTime: times,
    logitStand: logits,
    odds: odds.map((one) => one / total),
  };
}

/** Distance of each point from the middle, in standard deviations. */
const zOfPoint = Float64Array.from({ length: POINTS }, (_, i) => REACH_SD * ((2 * i) / (POINTS - 1) - 1));

const pointsAbout = ({ mean, sd }: Normal): Float64Array => zOfPoint.map((z) => mean + sd * z);

/** The prior's density at each point, up to a factor. */
const priorDensity = zOfPoint.map(contaminatedNormal);
const logPrior = priorDensity.map(Math.log);

/** The sum of the prior over the grid. */
const priorTotal = priorDensity.reduce((sum, one) => sum + one, 0) ** 2;
