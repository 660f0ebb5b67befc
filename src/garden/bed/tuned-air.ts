import { MIN_YEARS, yearsTold } from '../../answers/ahead/past-soil.js';
import { type MinimaTuning, tunedMinima } from '../../answers/climate/tuned-minima.js';
import { airDays } from '../../answers/windows/air-days.js';
import { RequestError } from '../../basics/errors.js';
import type { ReadSeries } from '../../readings/read-series.js';
import type { Place } from '../store/store.js';

/** A place's air, its minima moved to the frost dates that its grower knows, and how they were moved; null: they were not. */
export interface TunedAir {
  readonly series: readonly ReadSeries[];
  readonly tuning: MinimaTuning | null;
}

/**
 * Moves the minima of a place's air, measured and forecast, so that frost comes nearer to when its grower knows it to come: the
 * thermometer may stand in a town, the garden in a hollow. Fewer than three years, or a date that cannot be true, move nothing.
 */
export function tunedAir(
  series: readonly ReadSeries[],
  { latitude, lastFrostAround, firstFrostAround }: Pick<Place, 'latitude' | 'lastFrostAround' | 'firstFrostAround'>,
): TunedAir {
  const isTold = lastFrostAround !== null || firstFrostAround !== null;
  const days = isTold && yearsTold(series) >= MIN_YEARS ? airDays(series.filter(isMeasured)) : null;
  const tuning = days && tuningOf(() => tunedMinima(days, latitude, { lastFrostAround, firstFrostAround }, []));
  if (!tuning || tuning.movedK === 0) return { series, tuning };
  return { series: series.map((one) => moved(one, tuning.movedK)), tuning };
}

const isMeasured = ({ origin }: ReadSeries): boolean => origin === 'measured';

function tuningOf(tune: () => MinimaTuning): MinimaTuning | null {
  try {
    return tune();
  } catch (error) {
    if (error instanceof RequestError) return null;
    throw error;
  }
}

/** No minimum is above its maximum. */
const moved = (series: ReadSeries, movedK: number): ReadSeries => ({
  ...series,
  days: series.days.map((day) =>
    day.min === null ? day : { ...day, min: Math.min(day.min + movedK, day.max ?? Infinity) },
  ),
});
