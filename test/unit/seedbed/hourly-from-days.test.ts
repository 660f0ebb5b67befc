import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { soilDayShape } from '../../../src/seedbed/sun/day-curve.js';
import { type DayOnClock, hourlyFromDays } from '../../../src/seedbed/sun/hourly-from-days.js';

const shape = soilDayShape(5);

const day = (index: number, minC: number | null, maxC: number | null, meanC: number | null = null): DayOnClock => ({
  startH: 24 * index,
  endH: 24 * (index + 1),
  sunriseH: 24 * index + 6,
  sunsetH: 24 * index + 18,
  minC,
  meanC,
  maxC,
});

const mean = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / values.length;

describe('hourlyFromDays', () => {
  it('keeps within the extremes of the day and of its neighbours', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.double({ min: -5, max: 25, noNaN: true }), fc.double({ min: 0, max: 15, noNaN: true })), {
          minLength: 1,
          maxLength: 6,
        }),
        (given) => {
          const hourly = hourlyFromDays(
            given.map(([minC, range], i) => day(i, minC, minC + range)),
            24 * given.length,
            shape,
          );
          const lowest = Math.min(...given.map(([minC]) => minC));
          const highest = Math.max(...given.map(([minC, range]) => minC + range));
          for (const tempC of hourly) {
            expect(tempC).toBeGreaterThanOrEqual(lowest - 1e-9);
            expect(tempC).toBeLessThanOrEqual(highest + 1e-9);
          }
        },
      ),
    );
  });

  it('reaches the minimum after sunrise and the maximum after noon', () => {
    const hourly = hourlyFromDays([day(0, 10, 20), day(1, 10, 20), day(2, 10, 20)], 72, shape).subarray(24, 48);
    const coldest = hourly.indexOf(Math.min(...hourly));
    const warmest = hourly.indexOf(Math.max(...hourly));
    expect(coldest).toBeGreaterThanOrEqual(6);
    expect(coldest).toBeLessThanOrEqual(8);
    expect(warmest).toBeGreaterThanOrEqual(12);
    expect(warmest).toBeLessThanOrEqual(15);
    expect(Math.min(...hourly)).toBeCloseTo(10, 0);
    expect(Math.max(...hourly)).toBeCloseTo(20, 1);
  });

  it('does not jump at midnight, sunset or sunrise between unlike days', () => {
    const hourly = hourlyFromDays([day(0, 8, 15), day(1, 12, 24), day(2, 5, 11)], 72, shape);
    for (let hour = 1; hour < 72; hour++) expect(Math.abs(hourly[hour]! - hourly[hour - 1]!)).toBeLessThan(4);
  });

  it('gives the same temperature all day where minimum and maximum are one', () => {
    expect([...hourlyFromDays([day(0, 17, 17), day(1, 17, 17)], 48, shape)]).toEqual(new Array(48).fill(17));
  });

  it('meets a mean that is given beside the extremes, without moving them', () => {
    for (const wanted of [12, 13.8, 14.5, 15.5, 17]) {
      const days = [day(0, 10, 20, wanted), day(1, 10, 20, wanted), day(2, 10, 20, wanted)];
      const middle = hourlyFromDays(days, 72, shape).subarray(24, 48);
      expect(mean(middle)).toBeCloseTo(wanted, 6);
      expect(Math.max(...middle)).toBeLessThanOrEqual(20);
      expect(Math.min(...middle)).toBeGreaterThanOrEqual(10);
    }
  });

  it('is level where only a mean is known, and says nothing of days that are not given', () => {
    const hourly = hourlyFromDays([day(1, null, null, 12)], 72, shape);
    expect([...hourly.subarray(24, 48)]).toEqual(new Array(24).fill(12));
    expect(hourly.subarray(0, 24).every(Number.isNaN)).toBe(true);
    expect(hourly.subarray(48).every(Number.isNaN)).toBe(true);
  });
});
