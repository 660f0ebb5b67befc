import type { LocalityIndex } from './locality-index.js';
import { blocksBeginning, matchesInBlock } from './name-table.js';
import { likelihood, peopleOf } from './places-of-text.js';

/** Bound on the work of one question; a block takes a few microseconds. */
const MAX_BLOCKS_READ = 1000;

/**
 * The likeliest places with a name that begins with a key, at most `limit`. Of more than 16,000 such names only those
 * in the blocks with the largest places are looked at.
 *
 * @param take Whether a place counts.
 */
export function placesBeginning(
  index: LocalityIndex,
  key: string,
  limit: number,
  take: (place: number) => boolean,
): number[] {
  const best: { readonly place: number; readonly value: number }[] = [];
  const least = (): number => (best.length < limit ? 0 : best.at(-1)!.value);
  // Blocks with the largest places come first, so that most need not be read.
  const blocks = blocksBeginning(index, key).sort((a, b) => index.blockBest[a]! - index.blockBest[b]!);
  for (const block of blocks.slice(0, MAX_BLOCKS_READ)) {
    if (peopleOf(index, index.blockBest[block]!) <= least()) break;
    for (const match of matchesInBlock(index, block, key)) {
      const { place } = match;
      const value = likelihood(index, match);
      if (value <= least() || !take(place)) continue;
      const known = best.findIndex((one) => one.place === place);
      if (known >= 0 && best[known]!.value >= value) continue;
      if (known >= 0) best.splice(known, 1);
      const at = best.findIndex((one) => one.value < value);
      best.splice(at < 0 ? best.length : at, 0, { place, value });
      if (best.length > limit) best.pop();
    }
  }
  return best.map(({ place }) => place);
}
