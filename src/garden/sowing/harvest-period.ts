import type { Crop } from '../../germination/crop.js';
import { growthOf } from './harvest.js';

/** When a batch is picked, in days of growth at full pace from half emergence or from planting out. */
export interface HarvestPeriod {
  readonly fromDays: number;
  /** The first day on which there is no more of it. */
  readonly toDays: number;
  readonly countedFrom: 'sowing' | 'planting-out';
}

/**
 * When one batch is picked: around the middle of the published days, which are those of early and of late kinds, but not
 * before the first of them, and for as long as it stays good.
 *
 * @returns null where the days to maturity are not known.
 * @example harvestPeriodOf(headLettuce) // => { fromDays: 68, toDays: 82, countedFrom: 'sowing' }
 */
export function harvestPeriodOf(crop: Crop): HarvestPeriod | null {
  const growth = growthOf(crop);
  const { pickingDays: days } = crop;
  if (!growth || days === null) return null;
  const middle = (growth.fromDays + growth.toDays) / 2;
  const fromDays = Math.round(Math.max(growth.fromDays, middle - days / 2));
  return { fromDays, toDays: fromDays + days, countedFrom: growth.countedFrom };
}

/** Number of weeks that one batch is harvested. */
export const weeksOfHarvest = ({ fromDays, toDays }: HarvestPeriod): number =>
  Math.max(1, Math.floor((toDays - fromDays) / 7));
