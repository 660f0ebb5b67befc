import { describe, expect, it } from 'vitest';
import { aheadSdK } from '../../../src/answers/ahead/ahead-sd.js';
import { aheadUncertaintyK } from '../../../src/answers/ahead/ahead-uncertainty.js';
import { NORMAL_IN_THREE } from '../../../src/answers/ahead/ensemble.js';
import { comingWeight } from '../../../src/answers/ahead/years-ahead.js';
import { comingUncertaintyK } from '../../../src/answers/forecast/coming-uncertainty.js';

// By hand, from what our own study of 13 stations of the U.S. Climate Reference Network measured.
describe('how far a supposed day may be off', () => {
  it('is 0.81 K on the first day, 1.52 K after one fold of 8 days, and levels off at 1.63 K', () => {
    expect(aheadSdK('seasonal-drift', 0, false)).toBeCloseTo(Math.sqrt(0.09 + 2.56 * 0.2212), 3);
    expect(aheadSdK('seasonal-drift', 7, false)).toBeCloseTo(Math.sqrt(0.09 + 2.56 * 0.86466), 4);
    expect(aheadSdK('seasonal-drift', 300, false)).toBeCloseTo(Math.sqrt(0.09 + 2.56), 9);
  });

  it('levels off at 2.02 K in spring', () => {
    expect(aheadSdK('seasonal-drift', 300, true)).toBeCloseTo(Math.sqrt(0.09 + 4), 9);
  });

  it('of a week that comes again grows by the season, 3.6 K in a month and never over 15 K', () => {
    expect(aheadSdK('repeat-last-week', 0, false)).toBe(aheadSdK('seasonal-drift', 0, false));
    const [drift, week] = [aheadSdK('seasonal-drift', 30, false), aheadSdK('repeat-last-week', 30, false)];
    expect(Math.sqrt(week ** 2 - drift ** 2)).toBeCloseTo(3.6, 9);
    expect(aheadSdK('repeat-last-week', 365, false)).toBeCloseTo(Math.sqrt(0.09 + 2.56 + 225), 6);
  });

  it('of a forecast is 0.3 K at first and 2.28 K on the tenth day', () => {
    expect(comingUncertaintyK(0)).toBeCloseTo(0.3, 9);
    expect(comingUncertaintyK(9)).toBeCloseTo(2.28, 9);
  });
});

describe('how far the soil may be off in years to come', () => {
  it('of a usual year is at last what days lie from the usual: 2.25 K, the median of 103 stations', () => {
    const soil = { sdK: new Float64Array(24), sdAheadK: null };
    const uncertaintyK = aheadUncertaintyK(
      soil,
      { sdK: 0, isUsual: true },
      { fromH: 24, nHours: 24 * 200, comingH: 0 },
    );
    expect(uncertaintyK.at(-1)).toBeCloseTo(2.25, 6);
    // After one day the variance left open is 1 - e^(-2/8) of it.
    expect(uncertaintyK[0]).toBeCloseTo(2.25 * Math.sqrt(1 - Math.exp(-0.25)), 6);
  });
});

describe('how far a forecast’s days are trusted', () => {
  it('is wholly for two days, by half on the eighth, a tenth less each day about it, and not beyond the tenth', () => {
    const weights = Array.from({ length: 11 }, (_, day) => comingWeight(24 * day));
    expect(weights.slice(0, 2)).toEqual([1, 1]);
    expect(weights[7]).toBe(0.5);
    for (let day = 3; day < 9; day++) expect(weights[day]! - weights[day + 1]!).toBeCloseTo(0.1, 9);
    expect(weights[10]).toBe(0);
  });
});

describe('three points that stand for a normal distribution', () => {
  it('have its mean and its variance', () => {
    const sum = (power: number): number => NORMAL_IN_THREE.reduce<number>((total, z) => total + z ** power, 0);
    expect(sum(1)).toBeCloseTo(0, 9);
    expect(sum(2) / 3).toBeCloseTo(1, 3);
  });
});
