import { ScienceError } from '../../../src/basics/errors.js';

const DAYS = 11;

/**
 * The mean of the air over a day and the ten before it, which goes with the soil at 10 cm, by Zheng and others.
 *
 * @param airC Daily means of the air [°C]. Shape (n), n >= 11.
 * @param day  Which day, from 0; >= 10, < n.
 * @returns The mean [°C].
 * @throws ScienceError `out-of-range` for a day without ten before it.
 *
 * Source: Zheng, Hunt, Running (1993). A daily soil temperature model based on air temperature and precipitation for
 * continental applications. Clim. Res. 2: 183-191 (the mean; its regression is each region's own and left out).
 * @example elevenDayMeanC([8, 9, 7, 10, 12, 11, 13, 9, 10, 12, 14], 10) // => 10.4545
 */
export function elevenDayMeanC(airC: ArrayLike<number>, day: number): number {
  if (!(day >= DAYS - 1 && day < airC.length))
    throw new ScienceError('out-of-range', `elevenDayMeanC takes a day from ${DAYS - 1} on, not ${day}`);
  let sum = 0;
  for (let back = 0; back < DAYS; back++) sum += airC[day - back]!;
  return sum / DAYS;
}
