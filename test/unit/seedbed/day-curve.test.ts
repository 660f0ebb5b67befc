import { describe, expect, it } from 'vitest';
import { AIR_DAY_SHAPE, soilDayShape } from '../../../src/seedbed/sun/day-curve.js';

// Parton, Logan (1981), Agric. Meteorol. 23: 205-216: lag of the maximum, decay by night, lag of the minimum, as fitted at their
// site for each height.
const published = { air: [1.86, 2.2, -0.17], surface: [0.5, 1.81, 0.49], at10Cm: [0.45, 2.28, 1.83] };

describe('the shape of a day', () => {
  it('is the published one of air at 1.5 m, and of soil at the surface and at 10 cm', () => {
    expect(Object.values(AIR_DAY_SHAPE)).toEqual(published.air);
    expect(Object.values(soilDayShape(0))).toEqual(published.surface);
    for (const depthCm of [10, 20]) {
      const { a, b, c } = soilDayShape(depthCm);
      expect([a, b, c].map((value) => Number(value.toFixed(9)))).toEqual(published.at10Cm);
    }
  });

  it('has its minimum ever later with depth, as heat takes time to come down', () => {
    const lags = [0, 2.5, 5, 10].map((depthCm) => soilDayShape(depthCm).c);
    expect(lags).toEqual([...lags].sort((a, b) => a - b));
  });
});
