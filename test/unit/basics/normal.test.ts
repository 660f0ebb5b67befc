import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import { ScienceError } from '../../../src/basics/errors.js';
import { normalCdf } from '../../../src/basics/numerics/normal-cdf.js';
import { probit } from '../../../src/basics/numerics/probit.js';

/** The largest |f(x) - g(x)| over n + 1 evenly spaced x. NaN where either is NaN anywhere. */
function worstDifference(
  f: (x: number) => number,
  g: (x: number) => number,
  from: number,
  to: number,
  n: number,
): number {
  let worst = 0;
  for (let i = 0; i <= n; i++) {
    const x = from + ((to - from) * i) / n;
    worst = Math.max(worst, Math.abs(f(x) - g(x)));
  }
  return worst;
}

describe('normalCdf', () => {
  it('agrees with jStat to 1e-14 from -9 to 9', () => {
    expect(worstDifference(normalCdf, (z) => jStat.normal.cdf(z, 0, 1), -9, 9, 3000)).toBeLessThan(1e-14);
  });

  it('is half at 0, and 0 and 1 at the infinities', () => {
    expect([normalCdf(0), normalCdf(-Infinity), normalCdf(Infinity)]).toEqual([0.5, 0, 1]);
  });

  it('never falls where the series hands over to the fraction', () => {
    for (const seam of [-3, 3]) {
      const around = [-2, -1, 0, 1, 2].map((step) => normalCdf(seam + step * 1e-9));
      expect(around).toEqual([...around].sort((a, b) => a - b));
    }
  });

  it('adds up to 1 with its mirror image', () => {
    expect(
      worstDifference(
        (z) => normalCdf(z) + normalCdf(-z),
        () => 1,
        0,
        40,
        4000,
      ),
    ).toBeLessThan(1e-15);
  });

  it('answers NaN with NaN', () => {
    expect(normalCdf(Number.NaN)).toBeNaN();
  });
});

describe('probit', () => {
  it('agrees with jStat to 1e-12 for all but the last hundred-thousandth on each side', () => {
    expect(worstDifference(probit, (p) => jStat.normal.inv(p, 0, 1), 1e-5, 1 - 1e-5, 3000)).toBeLessThan(1e-12);
  });

  it('agrees with jStat to 1e-9 for all but the last hundred-millionth, where jStat itself grows coarse', () => {
    expect(worstDifference(probit, (p) => jStat.normal.inv(p, 0, 1), 1e-8, 1e-5, 1000)).toBeLessThan(1e-9);
  });

  it('is undone by normalCdf, however small the share', () => {
    let worst = 0;
    for (let exponent = -300; exponent < 0; exponent += 0.1) {
      const p = 10 ** exponent;
      worst = Math.max(worst, Math.abs(normalCdf(probit(p)) / p - 1));
    }
    expect(worst).toBeLessThan(1e-11);
  });

  it('undoes normalCdf', () => {
    expect(
      worstDifference(
        (z) => probit(normalCdf(z)),
        (z) => z,
        -37,
        0,
        3000,
      ),
    ).toBeLessThan(1e-12);
    expect(
      worstDifference(
        (z) => probit(normalCdf(z)),
        (z) => z,
        0,
        4,
        1000,
      ),
    ).toBeLessThan(1e-11);
  });

  it('is the same on both sides of half but for the sign', () => {
    for (const p of [0.25, 0.125, 2 ** -10, 2 ** -30]) expect(probit(1 - p)).toBe(-probit(p));
  });

  it('is 0 at half and infinite at 0 and 1', () => {
    expect([probit(0.5), probit(0), probit(1)]).toEqual([0, -Infinity, Infinity]);
  });

  it.each([-1e-9, 1.000_001, 50, Number.NaN, -Infinity, Infinity])('refuses %s, which is no probability', (p) => {
    expect(() => probit(p)).toThrow(ScienceError);
    expect(() => probit(p)).toThrow(
      expect.objectContaining({ code: 'out-of-range', message: expect.stringContaining(`${p}`) }),
    );
  });
});
