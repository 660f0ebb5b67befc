import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import { ScienceError } from '../../../src/basics/errors.js';
import { betaCdf } from '../../../src/basics/numerics/beta-cdf.js';
import { betaQuantile } from '../../../src/basics/numerics/beta-quantile.js';
import { chanceOfCount } from '../../../src/basics/numerics/chance-of-count.js';
import { gaussLegendre } from '../../../src/basics/numerics/gauss-legendre.js';

describe('the beta distribution', () => {
  it('is that of jStat, as far as that is good itself', () => {
    for (const [a, b] of [
      [0.5, 0.5],
      [1, 3],
      [9.5, 1.5],
      [88.5, 12.5],
    ] as const) {
      for (const x of [0.01, 0.2, 0.5, 0.86, 0.99]) {
        expect(betaCdf(x, a, b)).toBeCloseTo(jStat.beta.cdf(x, a, b), 7);
      }
    }
  });

  it('lies between 0 and 1, and nowhere else', () => {
    expect([betaCdf(-1, 2, 3), betaCdf(0, 2, 3), betaCdf(1, 2, 3), betaCdf(2, 2, 3)]).toEqual([0, 0, 1, 1]);
    expect([betaQuantile(0, 2, 3), betaQuantile(1, 2, 3)]).toEqual([0, 1]);
  });

  it('has no shapes of nothing, and no quantile of what is no probability', () => {
    for (const wrong of [
      () => betaCdf(0.5, 0, 1),
      () => betaCdf(0.5, 1, -1),
      () => betaCdf(0.5, Number.NaN, 1),
      () => betaCdf(0.5, 1, Infinity),
      () => betaQuantile(1.01, 1, 1),
      () => betaQuantile(Number.NaN, 1, 1),
    ]) {
      expect(wrong).toThrow(ScienceError);
    }
  });
});

describe('quadrature by Gauss and Legendre', () => {
  it('is exact for every power up to twice its nodes less one, and no further', () => {
    for (const n of [1, 2, 5, 64]) {
      const { at, weights } = gaussLegendre(n);
      const integral = (power: number): number => at.reduce((sum, x, i) => sum + weights[i]! * x ** power, 0);
      for (let power = 0; power < 2 * n; power++) {
        expect(integral(power), `x^${power} by ${n}`).toBeCloseTo(power % 2 === 0 ? 2 / (power + 1) : 0, 13);
      }
      if (n <= 5) expect(Math.abs(integral(2 * n) - 2 / (2 * n + 1))).toBeGreaterThan(1e-4);
    }
  });
});

describe('the chance of a count', () => {
  const half = { atLeast: (share: number) => (share <= 0.5 ? 1 : 0), corners: [0.5] };

  it('is that of heads, where the share is a half', () => {
    expect(chanceOfCount(2, 2, half)).toBeCloseTo(0.25, 12);
    expect(chanceOfCount(1, 2, half)).toBeCloseTo(0.75, 12);
    expect(chanceOfCount(3, 5, half)).toBeCloseTo(0.5, 12);
  });

  it('is certain of none, and impossible of more than there are', () => {
    expect([chanceOfCount(0, 0, half), chanceOfCount(0, 9, half), chanceOfCount(10, 9, half)]).toEqual([1, 1, 0]);
  });

  it('is every count alike likely, where every share is', () => {
    const any = { atLeast: (share: number) => 1 - share, corners: [] };
    for (let k = 1; k <= 7; k++) expect(chanceOfCount(k, 7, any)).toBeCloseTo((8 - k) / 8, 10);
  });

  it('is of whole numbers', () => {
    for (const [k, n] of [
      [0.5, 3],
      [-1, 3],
      [1, Number.NaN],
    ] as const) {
      expect(() => chanceOfCount(k, n, half)).toThrow(ScienceError);
    }
  });
});
