import type { PlainDate, Zone } from '../basics/calendar.js';
import type { ReadSeries } from './read-series.js';

/**
 * Daily extremes of the air as a series, as if they had been measured.
 *
 * @param dates Rising. Shape (n).
 * @param minC  Of each date [°C]; shape (n), as is `maxC`.
 */
export const dailyAirSeries = (
  dates: readonly PlainDate[],
  { minC, maxC }: { readonly minC: ArrayLike<number>; readonly maxC: ArrayLike<number> },
  zone: Zone,
): ReadSeries => ({
  medium: 'air',
  probeDepthCm: null,
  origin: 'measured',
  unit: 'C',
  zone,
  readings: null,
  days: dates.map((date, i) => ({ date, min: minC[i]!, mean: null, max: maxC[i]!, readings: 0, complete: true })),
  dayBasis: [],
  dayPlusMinusK: [],
  usualStepMs: null,
  meanC: null,
  warnings: [],
});
