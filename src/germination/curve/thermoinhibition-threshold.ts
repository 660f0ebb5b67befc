import type { CropRow } from '../crop.js';
import { shareCells } from './curve.js';

/** Seed counts as checked by heat once less than this share of the best still comes. */
const CHECKED_SHARE = 0.9;

/**
 * The temperature above which heat begins to hold a crop's seed.
 *
 * @param rows Rows in rising temperature.
 * @returns The warmest temperature at which the smoothed percent falls through 0.9 of the best [°C]; null where the
 * counted cells never fall so far, because the hot side was not tested.
 *
 * Source: derived from the crop's own cells; the share of 0.9 is our choice.
 * @example thermoinhibitionThreshold of lettuce's rows // => 25.569
 */
export function thermoinhibitionThreshold(rows: readonly CropRow[]): number | null {
  const { tempsC, values } = shareCells(rows);
  for (let i = values.lastIndexOf(1) + 1; i < values.length; i++) {
    const [warm, hot] = [values[i - 1]!, values[i]!];
    if (hot < CHECKED_SHARE) {
      return tempsC[i - 1]! + ((warm - CHECKED_SHARE) / (warm - hot)) * (tempsC[i]! - tempsC[i - 1]!);
    }
  }
  return null;
}
