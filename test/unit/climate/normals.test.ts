import { describe, expect, it } from 'vitest';
import { climatologicalAirOf } from '../../../src/climate/normals.js';

const DAYS_OF_MONTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const days = Float64Array.from({ length: 365 }, (_, i) => i + 1);

/** The means of a year's days by the month. */
function monthly(daily: Float64Array): number[] {
  let from = 0;
  return DAYS_OF_MONTHS.map((n) => {
    const some = daily.subarray(from, from + n);
    from += n;
    return some.reduce((sum, tempC) => sum + tempC, 0) / n;
  });
}

describe('a climatological year from normals', () => {
  it('has the normals as its months’ means, within what two waves and unequal months leave', () => {
    // De Bilt, the Netherlands, 1991-2020 (KNMI), daily maximum and minimum: from memory, to a few tenths.
    const meanMaxC = [6.1, 6.9, 10.4, 14.8, 18.5, 21.0, 23.2, 22.9, 19.4, 14.7, 9.8, 6.7];
    const meanMinC = [0.8, 0.7, 2.3, 4.5, 8.2, 11.0, 13.0, 12.5, 9.9, 7.0, 4.0, 1.6];
    const { minC, maxC } = climatologicalAirOf({ meanMaxC, meanMinC }, days);
    for (const [daily, means] of [
      [maxC, meanMaxC],
      [minC, meanMinC],
    ] as const) {
      const offK = monthly(daily).map((tempC, month) => Math.abs(tempC - means[month]!));
      expect(Math.max(...offK)).toBeLessThan(0.7);
    }
    // Averaging over months takes some of the wave away; the days have it back (Epstein 1991).
    expect(Math.max(...maxC)).toBeGreaterThan(Math.max(...meanMaxC));
  });

  it('is level where the months are', () => {
    const { minC, maxC } = climatologicalAirOf({ meanMaxC: Array(12).fill(15), meanMinC: Array(12).fill(5) }, [1, 180]);
    expect([...minC, ...maxC]).toEqual([5, 5, 15, 15].map((tempC) => expect.closeTo(tempC, 9)));
  });
});
