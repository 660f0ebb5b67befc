import { scaleLinear } from 'd3-scale';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { interpolate } from '../../../src/basics/numerics/interpolate.js';

describe('interpolate', () => {
  it('gives the knots their own values, to the bit', () => {
    const xs = [0, 5, 10, 15];
    const ys = [1 / 136, 1 / 31, 1 / 13, 1 / 7];
    expect(xs.map((x) => interpolate(x, xs, ys))).toEqual(ys);
  });

  it('stays level beyond the ends', () => {
    expect([-40, 9.9, 20.1, 1e9].map((x) => interpolate(x, [10, 20], [3, 7]))).toEqual([3, 3, 7, 7]);
  });

  it('gives the first value at a step, and the second just above it', () => {
    const read = (x: number): number => interpolate(x, [0, 10, 10, 20], [1, 1, 5, 5]);
    expect([9.99, 10, 10.000_001, 20].map(read)).toEqual([1, 1, 5, 5]);
  });

  it('reads a step at the very start by its first value', () => {
    expect([10, 10.5].map((x) => interpolate(x, [10, 10, 11], [0, 4, 6]))).toEqual([0, 5]);
  });

  it('needs only one knot', () => {
    expect([-1, 0, 1].map((x) => interpolate(x, [0], [42]))).toEqual([42, 42, 42]);
  });

  it('takes typed arrays as it takes others', () => {
    expect(interpolate(2.5, Float64Array.of(0, 5), Float64Array.of(0, 1))).toBe(0.5);
  });

  it('agrees with d3-scale, clamped, on any broken line', () => {
    const knots = fc
      .uniqueArray(fc.double({ min: -60, max: 60, noNaN: true }), { minLength: 2, maxLength: 12 })
      .map((xs) => xs.map((x) => Math.round(x * 100) / 100))
      .map((xs) => [...new Set(xs)].sort((a, b) => a - b))
      .filter((xs) => xs.length >= 2)
      .chain((xs) =>
        fc.tuple(
          fc.constant(xs),
          fc.array(fc.double({ min: -10, max: 10, noNaN: true }), { minLength: xs.length, maxLength: xs.length }),
        ),
      );
    fc.assert(
      fc.property(knots, fc.double({ min: -80, max: 80, noNaN: true }), ([xs, ys], x) => {
        const d3 = scaleLinear().domain(xs).range(ys).clamp(true);
        expect(interpolate(x, xs, ys)).toBeCloseTo(d3(x), 10);
      }),
      { numRuns: 300 },
    );
  });
});
