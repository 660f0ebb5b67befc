import { betaBinomialAtLeast } from '../../basics/numerics/beta-binomial-at-least.js';
import { logBetaBinomial } from '../../basics/numerics/log-beta-binomial.js';

/** A count as it is weighed. */
export interface SeenCount {
  readonly seedlings: number;
  readonly ofSeeds: number;
  /** After thinning nobody knows how many there were: so many at least. */
  readonly isAtLeast: boolean;
}

/** A count is wrong altogether so often, whoever counts; of such counts so many are of seedlings that nobody saw: our assumptions. */
const OUTLIER_SHARE = 0.05;
const OVERLOOKED = 0.5;
/** Seedlings stand in patches, some are eaten, some overlooked: a count scatters as if it were of so few seeds that are alike.
 * Our assumption. */
const CONCENTRATION = 1000;
/** Patches make more seeds than these say nothing new. */
const MAX_SEEDS = 1000;
/** Shares are tabled so finely, their square roots evenly spaced: finer towards 0. */
const SHARE_STEPS = 240;

/**
 * How likely a count is for each share of the seed that may be up: a beta-binomial sample, or wild, when nothing was seen
 * of what stood there, or any number is as likely.
 *
 * @param count  What was counted.
 * @param viable Share of the seed that comes where everything suits it, 0 to 1.
 * @returns Natural logarithms of the odds by the square root of the share, 0 to 1: `logOddsAt` looks them up. Shape (241).
 */
export function logOddsOfShares(count: SeenCount, viable: number): Float64Array {
  const scale = Math.min(1, MAX_SEEDS / count.ofSeeds);
  const ofSeeds = Math.round(scale * count.ofSeeds);
  // Seed better than it was taken to be comes up whole; it is no wild count.
  const seedlings = Math.min(Math.ceil(viable * ofSeeds), Math.ceil(scale * count.seedlings));
  const anyNumber = (OUTLIER_SHARE * (1 - OVERLOOKED)) / (ofSeeds + 1);
  const wild = count.isAtLeast
    ? anyNumber * (ofSeeds + 1 - seedlings)
    : anyNumber + (seedlings === 0 ? OUTLIER_SHARE * OVERLOOKED : 0);
  return Float64Array.from({ length: SHARE_STEPS + 1 }, (_, i) => {
    const share = Math.min(0.999, Math.max(1e-6, (i / SHARE_STEPS) ** 2));
    const [a, b] = [share * CONCENTRATION, (1 - share) * CONCENTRATION];
    const sampled = count.isAtLeast
      ? betaBinomialAtLeast(seedlings, ofSeeds, a, b)
      : Math.exp(logBetaBinomial(seedlings, ofSeeds, a, b));
    return Math.log(wild + (1 - OUTLIER_SHARE) * sampled);
  });
}

/** The logarithm at the square root of a share; between two steps a straight line. */
export function logOddsAt(logOdds: Float64Array, rootOfShare: number): number {
  const at = rootOfShare * SHARE_STEPS;
  const i = Math.min(SHARE_STEPS - 1, Math.floor(at));
  return logOdds[i]! + (at - i) * (logOdds[i + 1]! - logOdds[i]!);
}
