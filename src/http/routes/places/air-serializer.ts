import type { AirDay } from '../../../garden/store/store.js';
import { roundingFor } from '../../negotiation/rounding.js';

/** Serializes a day of air, without its unknown values. */
export function serializeAirDay({ date, min, mean, max }: AirDay, precision: 'full' | 'rounded') {
  const { temperature } = roundingFor(precision);
  return {
    date,
    ...(min === null ? {} : { min: temperature(min) }),
    ...(mean === null ? {} : { mean: temperature(mean) }),
    ...(max === null ? {} : { max: temperature(max) }),
  };
}
