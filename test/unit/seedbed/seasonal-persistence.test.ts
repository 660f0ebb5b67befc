import { describe, expect, it } from 'vitest';
import { seasonalPersistence } from '../../../src/seedbed/surface/seasonal-persistence.js';

const level = (n: number, tempC = 15): number[] => new Array(n).fill(tempC);
const yearAt = (latitude: number): Float64Array => seasonalPersistence(level(30), 1, latitude, 366);
const dayOf = (year: Float64Array, pick: (...values: number[]) => number): number => year.indexOf(pick(...year)) + 1;

describe('seasonalPersistence', () => {
  it('peaks in July in the north, and half a year later in January in the south', () => {
    // Common practice, no source: soil is warmest some weeks after midsummer on either side.
    expect(dayOf(yearAt(44), Math.max)).toBe(204);
    const south = seasonalPersistence(level(30), 60, -36, 366);
    expect((south.indexOf(Math.max(...south)) + 60) % 365).toBeCloseTo(21, -0.5);
    expect(dayOf(yearAt(-36), Math.min)).toBe(204);
  });

  it('has the same amplitude beyond 30 degrees, and a smaller one towards the equator', () => {
    // Late enough that the last day's anomaly has faded.
    const swing = (latitude: number): number => {
      const year = [...seasonalPersistence(level(30), 1, latitude, 800)].slice(100);
      return Math.max(...year) - Math.min(...year);
    };
    expect(swing(44)).toBeCloseTo(22, 1);
    expect(swing(30)).toBeCloseTo(22, 1);
    expect(swing(15)).toBeCloseTo(11, 1);
    expect(swing(0)).toBeCloseTo(0, 6);
  });
});
