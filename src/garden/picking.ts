import type { Crop } from '../germination/crop.js';
import { growthOf } from './harvest.js';

/**
 * How long one sowing is picked before it is over, or past its best [d]. Snap beans and beets are sown every two weeks
 * (seed sellers' lists), the others are common practice, no source.
 */
const pickingDays: Readonly<Record<string, number>> = {
  beet: 14,
  'bunching-onion': 21,
  cabbage: 21,
  carrot: 21,
  cauliflower: 10,
  celery: 28,
  cucumber: 28,
  eggplant: 56,
  lettuce: 14,
  'lima-bean': 14,
  muskmelon: 14,
  okra: 42,
  parsley: 56,
  parsnip: 56,
  pea: 14,
  pepper: 56,
  radish: 10,
  'snap-bean': 14,
  spinach: 14,
  'sweet-corn': 10,
  tomato: 42,
  turnip: 14,
  watermelon: 14,
};
const USUAL_PICKING_DAYS = 14;

/** When a batch is picked, in days of growth at full pace from half emergence or from planting out. */
export interface Picking {
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
 * @example pickingOf(lettuce) // => { fromDays: 68, toDays: 82, countedFrom: 'sowing' }
 */
export function pickingOf(crop: Crop): Picking | null {
  const growth = growthOf(crop);
  if (!growth) return null;
  const days = pickingDays[crop.id] ?? USUAL_PICKING_DAYS;
  const middle = (growth.fromDays + growth.toDays) / 2;
  const fromDays = Math.round(Math.max(growth.fromDays, middle - days / 2));
  return { fromDays, toDays: fromDays + days, countedFrom: growth.countedFrom };
}

/** Of how many weeks one batch is the harvest. */
export const weeksOfPicking = ({ fromDays, toDays }: Picking): number =>
  Math.max(1, Math.floor((toDays - fromDays) / 7));
