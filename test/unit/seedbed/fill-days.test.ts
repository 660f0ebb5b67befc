import { describe, expect, it } from 'vitest';
import { coversYear } from '../../../src/seedbed/probe/covers-year.js';
import { fillDays } from '../../../src/seedbed/sun/fill-days.js';

const days = Float64Array.from({ length: 366 }, (_, i) => i + 1);
/** A year that swings by 10 K and nothing else. */
const year = days.map((day) => 10 - 10 * Math.cos((2 * Math.PI * (day - 1)) / 365.2425));
/** That year without some days around 1 July, near its top. */
const without = (n: number): Float64Array => year.map((value, i) => (i >= 182 && i < 182 + n ? NaN : value));

describe('days without a value', () => {
  it('run straight up to three of them, and follow the year’s course from four on', () => {
    for (const n of [1, 2, 3]) {
      const [before, after] = [year[181]!, year[182 + n]!];
      const filled = fillDays(days, without(n));
      for (let i = 0; i < n; i++) {
        expect(filled[182 + i]).toBeCloseTo(before + ((after - before) * (i + 1)) / (n + 1), 9);
      }
    }
    const [filled, truth] = [fillDays(days, without(4)), year];
    for (let i = 182; i < 186; i++) expect(filled[i]).toBeCloseTo(truth[i]!, 4);
    const straight = year[181]! + ((year[186]! - year[181]!) * 2) / 5;
    expect(Math.abs(filled[183]! - straight)).toBeGreaterThan(1e-3);
  });
});

describe('a covered year', () => {
  /** So many days of each twelfth of a year. */
  const some = (each: number): Float64Array => days.map((_, i) => (i % 30.5 < each ? 1 : NaN));

  it('is two thirds of the days of every twelfth, twenty of thirty', () => {
    expect(coversYear(days, some(20))).toBe(true);
    expect(coversYear(days, some(19))).toBe(false);
  });
});
