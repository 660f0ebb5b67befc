import { interpolate } from '../../basics/numerics/interpolate.js';
import type { Crop } from '../crop.js';
import { germinationCurve, percentCells, rateAt } from './curve.js';

/** What a printed chart answers: one temperature in, days and percent out. */
export interface ChartAnswer {
  readonly meanC: number;
  /** Days to half emergence; null where nothing comes up. */
  readonly days: number | null;
  /** Normal seedlings in a hundred seeds. */
  readonly percent: number;
}

/**
 * A crop's constant-temperature chart, ready to be read: the raw cells, and straight lines between them.
 *
 * @param crop The crop, its rows as printed.
 * @returns What the chart says at a temperature [°C].
 * @example chartOf(onion)(20) // => { meanC: 20, days: 5, percent: 99 }
 */
export function chartOf(crop: Crop): (meanC: number) => ChartAnswer {
  const curve = germinationCurve(crop.rows, crop.soil?.maximumC ?? null);
  const { tempsC, values } = percentCells(crop.rows);
  return (meanC) => {
    const rate = rateAt(curve, meanC);
    // Beyond the rows, where no days are left, the last percent would promise what cannot come.
    const isBeyond = rate === 0 && (meanC < tempsC[0]! || meanC > tempsC.at(-1)!);
    const percent = isBeyond ? 0 : interpolate(meanC, tempsC, values);
    return { meanC, days: rate > 0 ? 1 / rate : null, percent };
  };
}
