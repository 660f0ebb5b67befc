import type { Milestone, NoMilestone } from '../../answers/forecast/milestones.js';
import { addDays, type PlainDate } from '../../basics/calendar.js';
import type { Crop } from '../../germination/crop.js';

/** From most of a sowing being up until its seedlings are large enough to thin [d]. */
const THIN_AFTER_DAYS = 10;
/** For so long it is still early enough [d]. */
const THIN_WITHIN_DAYS = 7;

/**
 * When a row is thinned; null where its crop is not sown thickly, or most of it does not come. Common practice, no source.
 *
 * @param crop The crop.
 * @param most When nine tenths of those that come are up.
 */
export function thinningOf(
  { isThinned }: Pick<Crop, 'isThinned'>,
  most: Milestone | NoMilestone,
): { readonly from: PlainDate; readonly to: PlainDate } | null {
  if ('why' in most || !isThinned) return null;
  const from = addDays(most.inBeds.to, THIN_AFTER_DAYS);
  return { from, to: addDays(from, THIN_WITHIN_DAYS - 1) };
}
