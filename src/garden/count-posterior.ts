import type { Middle } from '../answers/question.js';
import { logBetaBinomial } from '../basics/log-beta-binomial.js';
import { COHORTS } from '../germination/cohorts.js';
import { shareUp } from '../germination/time-factor-reach.js';

/** A share by its logit. */
export const logitOf = (share: number): number => Math.log(share / (1 - share));
export const shareOf = (logit: number): number => 1 / (1 + Math.exp(-logit));

export interface Normal {
  readonly mean: number;
  readonly sd: number;
}

/** What is supposed of a sowing before it is counted. */
export interface Belief {
  /** Natural logarithm of the time factor. */
  readonly logTime: Normal;
  /** Logit of the stand factor, of a sowing that lives. */
  readonly logitStand: Normal;
  /** How likely nothing at all comes of it, 0 to 1. */
  readonly deadShare: number;
}

/** A count as the posterior needs it. */
export interface SeenCount {
  readonly seedlings: number;
  readonly ofSeeds: number;
  /** After thinning nobody knows how many there were: so many at least. */
  readonly isAtLeast: boolean;
}

/** The counts of one sowing, and how far its seed can have come by each. */
export interface SeenSowing {
  readonly counts: readonly SeenCount[];
  /** Rows of `timeFactorReach` at the counts' hours, for each spread of `SPREADS`. */
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

/** A count is wrong altogether so often, whoever counts: our assumption. */
const WILD = 0.05;
/** Seedlings stand in patches, some are eaten, some overlooked: a count scatters as if it were of so few seeds that are alike.
 * Our assumption. */
const PATCHINESS = 1000;
/** The tails are wider than a normal distribution's: so often a sowing is of a wider kind, so many times as wide. */
const ODD_SHARE = 0.05;
const ODD_TIMES = 2.5;

const TIME_POINTS = 61;
const STAND_POINTS = 61;
const REACH_SD = 4.5;
/** Shares are looked up in a table, finer towards 0. */
const SHARE_STEPS = 240;

/** What a sowing's counts leave open. */
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
 * Each count is a beta-binomial sample of the seed, or wild: then any number is as likely. Between counts nothing is
 * handed on but the two factors, and how unlike the seeds are.
 *
 * @param belief What is supposed before the counts.
 * @param seen   The counts, in any order.
 * @returns The posterior, on a grid about the belief's.
 *
 * Source: Bayes' rule on a grid; the mixture for wild counts as in Box, Tiao (1968), A Bayesian approach to some outlier
 * problems. Biometrika 55. The numbers in it are our assumptions, judged on simulated beds (test/unit/garden).
 */
export function countPosterior({ logTime, logitStand, deadShare }: Belief, seen: SeenSowing): Posterior {
  const times = pointsAbout(logTime, TIME_POINTS);
  const logits = pointsAbout(logitStand, STAND_POINTS);
  const stands = logits.map(shareOf);
  const tables = seen.counts.map((count) => oddsOfShares(count, seen.viable));
  // Of hundreds of counts the product of the likelihoods is too small for a number: their logarithms are added.
  const logs = SPREADS.map(() => new Float64Array(TIME_POINTS * STAND_POINTS));
  const ups = new Float64Array(seen.counts.length);
  for (let i = 0; i < TIME_POINTS; i++) {
    const ofTime = bellAt(i, TIME_POINTS);
    SPREADS.forEach(({ odds: ofSpread }, spread) => {
      for (let k = 0; k < ups.length; k++) {
        ups[k] = seen.viable * shareUp(seen.reaches[spread]!, Math.exp(times[i]!), k * COHORTS);
      }
      for (let s = 0; s < STAND_POINTS; s++) {
        let log = Math.log(ofSpread * ofTime * bellAt(s, STAND_POINTS));
        for (let k = 0; k < ups.length; k++) log += Math.log(lookUp(tables[k]!, ups[k]! * stands[s]!));
        logs[spread]![i * STAND_POINTS + s] = log;
      }
    });
  }
  const highest = logs.reduce((high, some) => some.reduce((a, b) => Math.max(a, b), high), -Infinity);
  const odds = new Float64Array(TIME_POINTS * STAND_POINTS).map((_, i) =>
    logs.reduce((sum, some) => sum + Math.exp(some[i]! - highest), 0),
  );
  const total = odds.reduce((sum, one) => sum + one, 0);
  const alive = Math.log((1 - deadShare) * total) + highest;
  const none = tables.reduce((sum, table) => sum + Math.log(table[0]!), Math.log(deadShare * priorTotal));
  return {
    dead: 1 / (1 + Math.exp(alive - none)),
    logTime: times,
    logitStand: logits,
    odds: odds.map((one) => one / total),
  };
}

const pointsAbout = ({ mean, sd }: Normal, n: number): Float64Array =>
  Float64Array.from({ length: n }, (_, i) => mean + sd * REACH_SD * ((2 * i) / (n - 1) - 1));

/** The belief's density at a point, up to a factor. */
function bellAt(i: number, n: number): number {
  const z = REACH_SD * ((2 * i) / (n - 1) - 1);
  return (1 - ODD_SHARE) * Math.exp(-0.5 * z * z) + (ODD_SHARE / ODD_TIMES) * Math.exp(-0.5 * (z / ODD_TIMES) ** 2);
}

/** What the odds add up to before any count. */
const sumOfBell = (n: number): number => Array.from({ length: n }, (_, i) => bellAt(i, n)).reduce((a, b) => a + b, 0);
const priorTotal = sumOfBell(TIME_POINTS) * sumOfBell(STAND_POINTS);

/** Patches make more seeds than these say nothing new. */
const MOST_SEEDS = 1000;

/** How likely a count is for each share of the seed that may be up: the square roots of the shares are evenly spaced. */
function oddsOfShares(count: SeenCount, viable: number): Float64Array {
  const scale = Math.min(1, MOST_SEEDS / count.ofSeeds);
  const ofSeeds = Math.round(scale * count.ofSeeds);
  // Seed better than it was taken to be comes up whole; it is no wild count.
  const seedlings = Math.min(Math.ceil(viable * ofSeeds), Math.ceil(scale * count.seedlings));
  const wild = WILD / (ofSeeds + 1);
  return Float64Array.from({ length: SHARE_STEPS + 1 }, (_, i) => {
    const share = Math.min(0.999, Math.max(1e-6, (i / SHARE_STEPS) ** 2));
    const a = share * PATCHINESS;
    const b = (1 - share) * PATCHINESS;
    if (!count.isAtLeast) return wild + (1 - WILD) * Math.exp(logBetaBinomial(seedlings, ofSeeds, a, b));
    return wild * (ofSeeds + 1 - seedlings) + (1 - WILD) * chanceOfAtLeast(seedlings, ofSeeds, a, b);
  });
}

/** The beta-binomial chance of k or more of n: the terms on the side of k on which they fall are added up. */
function chanceOfAtLeast(k: number, n: number, a: number, b: number): number {
  const ratio = (j: number): number => ((n - j) * (j + a)) / ((j + 1) * (n - j - 1 + b));
  const isAbove = k * (a + b) >= n * a;
  let term = 1;
  let sum = 0;
  for (let j = k; isAbove ? j <= n : j > 0; ) {
    if (isAbove) {
      sum += term;
      term *= ratio(j++);
    } else {
      term /= ratio(--j);
      sum += term;
    }
    if (term < 1e-15 * sum) break;
  }
  const chance = sum * Math.exp(logBetaBinomial(k, n, a, b));
  return Math.min(1, Math.max(0, isAbove ? chance : 1 - chance));
}

function lookUp(table: Float64Array, share: number): number {
  const at = Math.sqrt(share) * SHARE_STEPS;
  const i = Math.min(SHARE_STEPS - 1, Math.floor(at));
  return table[i]! + (at - i) * (table[i + 1]! - table[i]!);
}

/** The time factor of a sowing that lives. */
export const timeFactorOf = (posterior: Posterior): Middle => {
  const { middle, from, to } = middleOf(posterior.logTime, oddsOfTimes(posterior));
  return { middle: Math.exp(middle), from: Math.exp(from), to: Math.exp(to) };
};

/** The stand factor of a sowing that lives. */
export const standFactorOf = (posterior: Posterior): Middle => {
  const { middle, from, to } = middleOf(posterior.logitStand, oddsOfStands(posterior));
  return { middle: shareOf(middle), from: shareOf(from), to: shareOf(to) };
};

/** The odds of each point of time, whatever the stand. */
export function oddsOfTimes({ odds }: Posterior): Float64Array {
  const sums = new Float64Array(TIME_POINTS);
  odds.forEach((one, i) => {
    sums[Math.floor(i / STAND_POINTS)]! += one;
  });
  return sums;
}

/** The odds of each point of the stand, whatever the time. */
export function oddsOfStands({ odds }: Posterior): Float64Array {
  const sums = new Float64Array(STAND_POINTS);
  odds.forEach((one, i) => {
    sums[i % STAND_POINTS]! += one;
  });
  return sums;
}

const middleOf = (points: Float64Array, odds: Float64Array): Middle => ({
  middle: quantileOf(points, odds, 0.5),
  from: quantileOf(points, odds, 0.1),
  to: quantileOf(points, odds, 0.9),
});

/** Each point stands for what is nearest to it. */
function quantileOf(points: Float64Array, odds: Float64Array, share: number): number {
  const step = points[1]! - points[0]!;
  let sum = 0;
  let i = 0;
  while (i < points.length - 1 && sum + odds[i]! < share) sum += odds[i++]!;
  return points[i]! + step * ((share - sum) / Math.max(odds[i]!, 1e-300) - 0.5);
}

/**
 * What counts say alone, apart from what was supposed before them, as a normal distribution.
 *
 * @param before What was supposed.
 * @param points Of the quantity. Shape (n).
 * @param odds   After the counts. Shape (n), adding up to 1.
 * @returns The normal distribution that would turn `before` into one of the same mean and spread; null where the counts
 * have hardly narrowed it.
 */
export function saidAlone(before: Normal, points: Float64Array, odds: Float64Array): Normal | null {
  let mean = 0;
  points.forEach((point, i) => {
    mean += point * odds[i]!;
  });
  // Each point stands for what is nearest to it, so that no counts are ever taken as exact.
  let variance = (points[1]! - points[0]!) ** 2 / 12;
  points.forEach((point, i) => {
    variance += odds[i]! * (point - mean) ** 2;
  });
  const precision = 1 / variance - 1 / before.sd ** 2;
  if (precision * before.sd ** 2 < LEAST_SAID) return null;
  return { mean: (mean / variance - before.mean / before.sd ** 2) / precision, sd: 1 / Math.sqrt(precision) };
}

/** Less than this, beside what was known before, is nothing. */
const LEAST_SAID = 0.2;
