import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ScienceError } from '../../../src/basics/errors.js';
import { choleskyFactor, solveLower } from '../../../src/basics/numerics/cholesky.js';

const numbers = (length: number) =>
  fc.array(fc.double({ min: -10, max: 10, noNaN: true }), { minLength: length, maxLength: length });

/** M Mᵀ with something added on the diagonal: positive definite whatever M is. */
const positiveDefinite = fc.integer({ min: 1, max: 8 }).chain((n) =>
  fc.tuple(numbers(n * n), numbers(n)).map(([m, b]) => {
    const row = (i: number): number[] => m.slice(i * n, (i + 1) * n);
    const matrix = Array.from({ length: n * n }, (_, at) => {
      const [i, j] = [Math.floor(at / n), at % n];
      return row(i).reduce((sum, value, k) => sum + value * row(j)[k]!, i === j ? 0.5 : 0);
    });
    return { n, matrix, b };
  }),
);

describe('choleskyFactor and solveLower', () => {
  it('give a lower triangle whose square is the matrix', () => {
    fc.assert(
      fc.property(positiveDefinite, ({ n, matrix }) => {
        const lower = choleskyFactor(Object.freeze(matrix), n);
        for (let i = 0; i < n; i++) {
          for (let j = 0; j < n; j++) {
            let product = 0;
            for (let k = 0; k < n; k++) product += lower[i * n + k]! * lower[j * n + k]!;
            expect(product).toBeCloseTo(matrix[i * n + j]!, 9);
            if (j > i) expect(lower[i * n + j]).toBe(0);
          }
        }
      }),
    );
  });

  it('solve what they are given: L y is b', () => {
    fc.assert(
      fc.property(positiveDefinite, ({ n, matrix, b }) => {
        const lower = choleskyFactor(matrix, n);
        const y = solveLower(lower, b);
        for (let i = 0; i < n; i++) {
          let product = 0;
          for (let k = 0; k <= i; k++) product += lower[i * n + k]! * y[k]!;
          expect(product).toBeCloseTo(b[i]!, 7);
        }
      }),
    );
  });

  it('refuse a matrix that is not positive definite, or holds no number', () => {
    for (const matrix of [
      [1, 2, 2, 1],
      [0, 0, 0, 0],
      [-1, 0, 0, 1],
      [Number.NaN, 0, 0, 1],
    ]) {
      expect(() => choleskyFactor(matrix, 2)).toThrow(ScienceError);
    }
  });
});
