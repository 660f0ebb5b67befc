import { describe, expect, it } from 'vitest';
import { aDayWide, rangeOf } from '../../../src/answers/range.js';

/** The range of an event so many supposed days ahead, over the days of its forecast. */
function ratios(days: number, beyond: 'seasonal-drift' | 'repeat-last-week'): number[] {
  const { fromH, toH } = rangeOf(24 * days, 0, beyond);
  return [fromH / (24 * days), toH / (24 * days)];
}
const near = (...values: number[]) => values.map((value) => expect.closeTo(value, 6));

// By hand, from the ratios that our own comparison at 13 stations of the U.S. Climate Reference Network measured.
describe('the range of an event that the season’s drift foretells', () => {
  it('is in the middle of a class of days what that class measured', () => {
    expect(ratios(7.5, 'seasonal-drift')).toEqual(near(0.9, 1.14));
    expect(ratios(15, 'seasonal-drift')).toEqual(near(0.76, 1.27));
    expect(ratios(30, 'seasonal-drift')).toEqual(near(0.67, 1.36));
    expect(ratios(100, 'seasonal-drift')).toEqual(near(0.59, 1.16));
  });

  it('runs straight between the middles', () => {
    // Halfway from 2.5 to 7.5 days, from 7.5 to 15, from 15 to 30 and from 30 to 100.
    expect(ratios(5, 'seasonal-drift')).toEqual(near(0.91, 1.13));
    expect(ratios(11.25, 'seasonal-drift')).toEqual(near(0.83, 1.205));
    expect(ratios(22.5, 'seasonal-drift')).toEqual(near(0.715, 1.315));
    expect(ratios(65, 'seasonal-drift')).toEqual(near(0.63, 1.26));
  });
});

describe('the range of an event in a week that comes again and again', () => {
  it('reaches far earlier, and never later than the drift’s from ten days on', () => {
    expect(ratios(15, 'repeat-last-week')).toEqual(near(0.63, 1.09));
    expect(ratios(30, 'repeat-last-week')).toEqual(near(0.44, 1));
    expect(ratios(100, 'repeat-last-week')).toEqual(near(0.27, 1));
  });
});

describe('any range', () => {
  it('is a day wide at least, as growers look once a day', () => {
    expect(aDayWide({ fromH: 100, toH: 110 })).toEqual({ fromH: 93, toH: 117 });
    expect(aDayWide({ fromH: 100, toH: 125 })).toEqual({ fromH: 100, toH: 125 });
  });
});
