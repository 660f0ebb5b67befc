import { chanceOfCount, type UncertainShare } from '../../basics/numerics/chance-of-count.js';

/** More seeds than this are never told. */
export const MAX_SEEDS = 10_000_000;

/** How many seeds to sow, and the plants that they give, 80 times in 100. */
export interface FewestSeeds {
  readonly seeds: number;
  readonly plants: { readonly from: number; readonly to: number };
}

/** The share of cases below the range, and above it. */
const TAIL = 0.1;

/**
 * The smallest number of seeds that gives at least so many plants, as surely as wanted.
 *
 * All seeds of a sowing share one lot and one bed, of which it is not known how good they are: so a few more seeds than the
 * mean of both asks for are not enough, and no division gives the number.
 *
 * @param plants   How many plants are wanted, a whole number, 1 or more.
 * @param sureness The chance of that many or more, over 0 and below 1.
 * @param share    What is known of the share of seeds that become plants.
 * @returns The seeds, and the range of plants; null where `MAX_SEEDS` are not enough.
 *
 * Formula: the smallest n with chanceOfCount(plants, n, share) >= sureness, by doubling and halving.
 * Accuracy: the same number as a search over scipy's betabinom (fixtures/golden/fewest-seeds-of-a-test.json) and over
 * its integrals of beta and uniform shares (fixtures/golden/fewest-seeds-in-beds.json).
 */
export function fewestSeeds(plants: number, sureness: number, share: UncertainShare): FewestSeeds | null {
  const isEnough = (seeds: number): boolean => chanceOfCount(plants, seeds, share) >= sureness;
  let enough = plants;
  let short = plants - 1;
  while (!isEnough(enough)) {
    if (enough >= MAX_SEEDS) return null;
    short = enough;
    enough = Math.min(MAX_SEEDS, 2 * enough);
  }
  const seeds = firstFrom(short + 1, enough, isEnough);
  // The most plants that come with at least this chance: the last before the first that does not.
  const atChance = (chance: number): number =>
    firstFrom(1, seeds + 1, (count) => chanceOfCount(count, seeds, share) < chance) - 1;
  return { seeds, plants: { from: atChance(1 - TAIL), to: atChance(TAIL) } };
}

/** The first whole number from `low` on for which something holds that goes on holding; `high` where none before it. */
function firstFrom(low: number, high: number, holds: (n: number) => boolean): number {
  let [from, to] = [low, high];
  while (from < to) {
    const middle = Math.floor((from + to) / 2);
    if (holds(middle)) to = middle;
    else from = middle + 1;
  }
  return from;
}
