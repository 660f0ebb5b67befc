import type { PlainDate } from '../basics/calendar.js';
import type { AirDay } from '../garden/store/store.js';
import { isTemperature } from '../readings/read-series.js';

/** What a source says of one date [°C]; what it does not say is null or left out. */
export interface SaidOfDay {
  readonly min?: number | null | undefined;
  readonly mean?: number | null | undefined;
  readonly max?: number | null | undefined;
}

/**
 * A day of air as it is kept: it has both a minimum and a maximum, or neither. What no air can have, and a mean beyond
 * its own extremes, is not used.
 *
 * @returns undefined where nothing is left.
 */
export function airDayOf(date: PlainDate, said: SaidOfDay): AirDay | undefined {
  const [min, mean, max] = [said.min, said.mean, said.max].map(usable) as [number | null, number | null, number | null];
  if (min === null || max === null || min > max)
    return mean === null ? undefined : { date, min: null, mean, max: null };
  return { date, min, mean: mean !== null && mean >= min && mean <= max ? mean : null, max };
}

const usable = (valueC: number | null | undefined): number | null =>
  valueC !== null && valueC !== undefined && isTemperature(valueC) ? valueC : null;
