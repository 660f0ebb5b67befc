import type { Crop } from '../../germination/crop.js';
import { COHORTS } from '../../germination/run/cohorts.js';
import { shareUp } from '../../germination/run/largest-delay-factors.js';
import { type SeenSowing, SPREADS } from './count-posterior.js';

/** Most of what can come at all: so that nine in ten dead rows of invented beds are called lost within twice the days to most. */
const MOST = 0.75;
/** A delay factor so small that all seed germinable at some hour has emerged. */
const AT_ONCE = 1e-6;

/**
 * Would most of what the temperatures let come be up by the last count in a slow bed, too?
 *
 * @param seen  The counts, in the order of dates, beside how far the seed can have come by each.
 * @param crop  Its slowest beds: the upper end of `bedTimeFactor`.
 * @returns false where nothing could come at all.
 */
export const isOverdue = ({ reaches, counts }: SeenSowing, crop: Pick<Crop, 'bedTimeFactor'>): boolean =>
  isOverdueBy(reaches, (counts.length - 1) * COHORTS, crop);

/** The same by one of the hours of some reaches: that whose row begins at an index. */
export function isOverdueBy(
  reaches: SeenSowing['reaches'],
  row: number,
  { bedTimeFactor }: Pick<Crop, 'bedTimeFactor'>,
): boolean {
  const usualReach = reaches[SPREADS.findIndex(({ times }) => times === 1)]!;
  const canCome = shareUp(usualReach, AT_ONCE, row);
  return canCome > 0 && shareUp(usualReach, bedTimeFactor.to, row) >= MOST * canCome;
}
