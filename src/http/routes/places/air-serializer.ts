import type { AirDay } from '../../../garden/store/store.js';
import { roundingFor } from '../../negotiation/rounding.js';

/** A day of air, without what is not known of it. */
export function serializeAirDay({ date, min, mean, max }: AirDay, precision: 'full' | 'rounded') {
  const { temperature } = roundingFor(precision);
  return {
    date,
    ...(min === null ? {} : { min: temperature(min) }),
    ...(mean === null ? {} : { mean: temperature(mean) }),
    ...(max === null ? {} : { max: temperature(max) }),
  };
}
