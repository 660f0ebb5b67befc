import fc from 'fast-check';
import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import { fitLine } from '../../../src/basics/numerics/fit-line.js';

describe('fitLine', () => {
  it('finds the line that points lie on', () => {
    const { slope, intercept, rSquared } = fitLine(Object.freeze([5, 10, 25]), Object.freeze([0.1, 0.2, 0.5]));
    expect(slope).toBeCloseTo(0.02, 15);
    expect(intercept).toBeCloseTo(0, 15);
    expect(rSquared).toBeCloseTo(1, 15);
  });

  it('agrees with the least squares of jStat', () => {
    const points = fc
      .uniqueArray(fc.integer({ min: -40, max: 60 }), { minLength: 3, maxLength: 9 })
      .chain((xs) =>
        fc.tuple(
          fc.constant(xs),
          fc.array(fc.integer({ min: 1, max: 200 }), { minLength: xs.length, maxLength: xs.length }),
        ),
      )
      .filter(([, ys]) => new Set(ys).size > 1);
    fc.assert(
      fc.property(points, ([xs, ys]) => {
        const ours = fitLine(xs, ys);
        const { coef, R2 } = jStat.models.ols(
          [...ys],
          xs.map((x) => [1, x]),
        );
        expect(ours.intercept).toBeCloseTo(coef[0]!, 7);
        expect(ours.slope).toBeCloseTo(coef[1]!, 8);
        expect(ours.rSquared).toBeCloseTo(R2, 8);
      }),
    );
  });
});
