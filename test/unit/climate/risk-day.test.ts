import fc from 'fast-check';
import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../../src/climate/normal-quantile.js';
import { riskDay } from '../../../src/climate/risk-day.js';
import { weibullQuantile } from '../../../src/climate/weibull-quantile.js';

const daysOfYears = fc
  .array(fc.integer({ min: 60, max: 180 }), { minLength: 2, maxLength: 40 })
  .map((days) => days.sort((a, b) => a - b));
const inOrder = (days: readonly (number | null)[]): boolean => {
  const known = days.filter((day) => day !== null);
  return known.every((day, i) => i === 0 || day >= known[i - 1]!);
};

describe('riskDay', () => {
  it('leaves less risk of a frost after it the later it is, and more of one before it', () => {
    fc.assert(
      fc.property(daysOfYears, fc.nat(10), (days, without) => {
        const at = (side: 'spring' | 'autumn') =>
          [0.9, 0.7, 0.5, 0.3, 0.1].map((risk) => riskDay(days, days.length + without, risk, side));
        return inOrder(at('spring')) && inOrder(at('autumn').reverse());
      }),
    );
  });

  it('is the same for autumns as for springs seen in a mirror', () => {
    fc.assert(
      fc.property(daysOfYears, fc.nat(10), fc.constantFrom(0.1, 0.25, 0.5, 0.9), (days, without, risk) => {
        const mirrored = days.map((day) => -day).reverse();
        const spring = riskDay(days, days.length + without, risk, 'spring');
        const autumn = riskDay(mirrored, days.length + without, risk, 'autumn');
        if (spring === null) expect(autumn).toBeNull();
        else expect(autumn).toBeCloseTo(-spring, 6);
      }),
    );
  });

  it('is reached by as many seasons as it says, where there are many', () => {
    // 30 of 40 springs have a frost; after the day of risk 0.3, 12 of 40 should have one still to come.
    const days = Array.from({ length: 30 }, (_, i) => normalQuantile([100, 120], (i + 0.5) / 30));
    const day = riskDay(days, 40, 0.3, 'spring')!;
    expect(days.filter((one) => one > day)).toHaveLength(12);
  });

  it('needs nine seasons at a tenth', () => {
    const days = [100, 103, 105, 110, 111, 117, 120, 121, 130];
    expect(riskDay(days, 9, 0.9, 'spring')).toBeCloseTo(100, 6);
    expect(riskDay(days, 9, 0.1, 'spring')).toBeCloseTo(130, 6);
    expect(riskDay(days.slice(1), 8, 0.9, 'spring')).toBeNull();
    expect(riskDay(days.slice(1), 8, 0.1, 'spring')).toBeNull();
    // A frost in one spring of eight, four fifths of these after the first day: a tenth, but for the last bit.
    expect(riskDay([100, 103, 105, 110], 32, 0.1, 'spring')).toBeCloseTo(100, 6);
  });

  it('is unknown where the risk is never so great, and without any frost', () => {
    expect(riskDay([100, 110, 120], 6, 0.5, 'spring')).toBeNull();
    expect(riskDay([100, 110, 120], 6, 0.5, 'autumn')).toBeNull();
    expect(riskDay([], 12, 0.1, 'spring')).toBeNull();
    expect(riskDay([], 0, 0.1, 'autumn')).toBeNull();
  });
});

describe('weibullQuantile', () => {
  it('puts n values at 1/(n + 1) to n/(n + 1), and says nothing beyond', () => {
    const values = [3, 5, 9, 10, 12, 13, 17, 20, 21];
    values.forEach((value, i) => {
      expect(weibullQuantile(values, (i + 1) / 10)).toBeCloseTo(value, 9);
    });
    expect(weibullQuantile(values, 0.15)).toBeCloseTo(4, 9);
    expect(weibullQuantile(values, 0.099)).toBeNull();
    expect(weibullQuantile(values, 0.901)).toBeNull();
    expect(weibullQuantile([7], 0.5)).toBe(7);
    expect(weibullQuantile([], 0.5)).toBeNull();
  });
});

describe('normalQuantile', () => {
  it('is that of another library for the mean and the standard deviation with n - 1', () => {
    const values = [131, 126, 121, 147, 139, 143, 140, 129, 134, 130, 147];
    const mean = values.reduce((sum, one) => sum + one, 0) / 11;
    const sd = Math.sqrt(values.reduce((sum, one) => sum + (one - mean) ** 2, 0) / 10);
    for (const p of [0.01, 0.1, 0.5, 0.75, 0.99]) {
      expect(normalQuantile(values, p)).toBeCloseTo(jstat.normal.inv(p, mean, sd), 6);
    }
  });

  it('is the one day on which all frosts came', () => {
    expect(normalQuantile([120, 120, 120], 0.1)).toBe(120);
  });

  it('refuses a single value', () => {
    expect(() => normalQuantile([120], 0.5)).toThrow(/two values/);
  });
});
