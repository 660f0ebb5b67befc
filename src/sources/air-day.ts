import type { PlainDate } from '../basics/calendar.js';
import type { AirDay } from '../garden/store/store.js';
import { isTemperature } from '../readings/read-series.js';

/** A source's values for one date [°C]; missing ones are null or left out. */
export interface DayValues {
  readonly min?: number | null | undefined;
  readonly mean?: number | null | undefined;
  readonly max?: number | null | undefined;
}

/**
 * A day of air to store, with both a minimum and a maximum or neither. Values that air cannot have, and a mean outside
 * its own extremes, are dropped.
 *
 * @returns undefined when no value is left.
 */
export function airDayOf(date: PlainDate, values: DayValues): AirDay | undefined {
  const [min, mean, max] = [values.min, values.mean, values.max].map(usable) as [
    number | null,
    number | null,
    number | null,
  ];
  if (min === null || max === null || min > max)
    return mean === null ? undefined : { date, min: null, mean, max: null };
  return { date, min, mean: mean !== null && mean >= min && mean <= max ? mean : null, max };
}

const usable = (valueC: number | null | undefined): number | null =>
  valueC !== null && valueC !== undefined && isTemperature(valueC) ? valueC : null;
