import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import { betaBinomialAtLeast } from '../../../src/basics/numerics/beta-binomial-at-least.js';
import { logBetaBinomial } from '../../../src/basics/numerics/log-beta-binomial.js';

describe('the beta-binomial distribution', () => {
  it('with a flat beta gives every count the same chance', () => {
    for (let k = 0; k <= 12; k++) expect(Math.exp(logBetaBinomial(k, 12, 1, 1))).toBeCloseTo(1 / 13, 12);
  });

  it.each([
    [20, 2, 5],
    [200, 0.3, 900],
    [1000, 400, 600],
  ])('of %i adds up to 1 and has the mean n a/(a+b)', (n, a, b) => {
    const odds = Array.from({ length: n + 1 }, (_, k) => Math.exp(logBetaBinomial(k, n, a, b)));
    expect(odds.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 8);
    expect(odds.reduce((sum, one, k) => sum + k * one, 0)).toBeCloseTo((n * a) / (a + b), 6);
  });

  it('becomes the binomial distribution where the share is all but known (jstat)', () => {
    for (const k of [0, 3, 7, 20]) {
      expect(Math.exp(logBetaBinomial(k, 20, 3e7, 7e7))).toBeCloseTo(jStat.binomial.pdf(k, 20, 0.3), 6);
    }
  });
});

describe('the chance of so many or more', () => {
  it.each([
    [20, 2, 5],
    [300, 0.4, 900],
    [1000, 400, 600],
  ])('of %i is the sum of the terms from there on', (n, a, b) => {
    for (const k of [0, 1, Math.round(n / 7), Math.round(0.4 * n), n - 1, n]) {
      let sum = 0;
      for (let j = k; j <= n; j++) sum += Math.exp(logBetaBinomial(j, n, a, b));
      expect(betaBinomialAtLeast(k, n, a, b)).toBeCloseTo(sum, 8);
    }
  });
});
