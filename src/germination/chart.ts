import { interpolate } from '../basics/interpolate.js';
import type { Crop } from './crop.js';
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
 * What a constant-temperature chart says at one temperature: the raw cells, read off by a straight line between them.
 *
 * @param crop The crop, its rows as printed.
 * @param meanC Temperature to read the chart at [°C].
 * @example chartAt(onion, 20) // => { meanC: 20, days: 5, percent: 99 }
 */
export function chartAt(crop: Crop, meanC: number): ChartAnswer {
  const rate = rateAt(germinationCurve(crop.rows, crop.soil?.maximumC ?? null), meanC);
  const { tempsC, values } = percentCells(crop.rows);
  return { meanC, days: rate > 0 ? 1 / rate : null, percent: interpolate(meanC, tempsC, values) };
}
