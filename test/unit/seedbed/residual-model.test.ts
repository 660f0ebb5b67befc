import { describe, expect, it } from 'vitest';
import {
  onBareGround,
  residualCovarianceK2,
  residualsWithoutRain,
  residualsWithRain,
  residualVarianceK2,
} from '../../../src/seedbed/surface/residual-model.js';

// Numbers from our own study of the U.S. Climate Reference Network, 2009-2024.
describe('the residual model', () => {
  it('is scaled by dryness: 0.784 where annual rain meets what evaporates, more in dry country', () => {
    expect(residualsWithRain(Math.log(1 + 0.1) + 0.6).scale).toBeCloseTo(0.784, 3);
    expect(residualsWithRain(Math.log(0.15 + 0.1) + 0.6).scale).toBeGreaterThan(1.3);
  });

  it('without rain is scaled by vapour: 0.743 at a mean rise of 0.9 kPa, by hand', () => {
    expect(residualsWithoutRain(0.9 - 1.2).scale).toBeCloseTo(0.85 * Math.exp(-0.135), 12);
  });

  it('is no less unsure without rain than with it, in the average climate', () => {
    const [withRain, without] = [residualsWithRain(0), { ...residualsWithoutRain(0), scale: 1 }];
    expect(residualVarianceK2(without, 0.2)).toBeGreaterThan(residualVarianceK2(withRain, 0.2));
  });

  it('by hand: w (0.87 + 0.1 0.28 2 + 0.01 3.9 + 0.75 + 0.70 + 0.05) at x 0.1', () => {
    expect(residualVarianceK2({ ...residualsWithRain(0), scale: 0.784 }, 0.1)).toBeCloseTo(0.784 * 2.465, 12);
  });

  it('has covariances that are alike in either direction, and noise of each day’s own', () => {
    for (const model of [residualsWithRain(0.4), residualsWithoutRain(0.4), onBareGround(residualsWithRain(0))]) {
      expect(residualCovarianceK2(model, 5, 0.3, -0.2)).toBe(residualCovarianceK2(model, -5, -0.2, 0.3));
      const own = residualCovarianceK2(model, 0, 0.3, 0.3);
      expect(residualVarianceK2(model, 0.3) - own).toBeCloseTo(0.05 * model.scale, 12);
    }
  });
});
