import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isotonic } from '../../../src/basics/numerics/isotonic.js';

const values = fc.array(fc.integer({ min: 0, max: 100 }), { maxLength: 12 });
const sum = (numbers: readonly number[]): number => numbers.reduce((total, value) => total + value, 0);
const squares = (a: readonly number[], b: readonly number[]): number => sum(a.map((value, i) => (value - b[i]!) ** 2));

/** All ways to cut values into runs of neighbours, each run levelled to its mean. */
function levellings(given: readonly number[]): number[][] {
  if (given.length === 0) return [[]];
  return given.flatMap((_, cut) => {
    const run = given.slice(0, cut + 1);
    const level = sum(run) / run.length;
    return levellings(given.slice(cut + 1)).map((rest) => [...run.map(() => level), ...rest]);
  });
}

const neverFalls = (numbers: readonly number[]): boolean =>
  numbers.every((value, i) => i === 0 || value >= numbers[i - 1]! - 1e-9);

describe('isotonic', () => {
  it("pools celery's cells from 5 to 15 °C into their mean", () => {
    const cells = Object.freeze([0, 72, 70, 40, 97]);
    const pooled = (72 + 70 + 40) / 3;
    expect(isotonic(cells)).toEqual([0, pooled, pooled, pooled, 97]);
  });

  it('of nothing is nothing', () => {
    expect(isotonic([])).toEqual([]);
  });

  it('leaves rising values alone', () => {
    const rising = values.map((given) => Object.freeze(given.toSorted((a, b) => a - b)));
    fc.assert(
      fc.property(rising, (given) => {
        expect(isotonic(given)).toEqual(given);
      }),
    );
  });

  it('never falls, keeps the sum, and changes nothing a second time', () => {
    fc.assert(
      fc.property(values, (given) => {
        const smooth = isotonic(given);
        expect(smooth).toHaveLength(given.length);
        expect(neverFalls(smooth)).toBe(true);
        expect(sum(smooth)).toBeCloseTo(sum(given), 8);
        isotonic(smooth).forEach((value, i) => {
          expect(value).toBeCloseTo(smooth[i]!, 10);
        });
      }),
    );
  });

  it('is as near in squares as the best of all ways to level neighbours', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 1, maxLength: 6 }), (given) => {
        const best = Math.min(
          ...levellings(given)
            .filter(neverFalls)
            .map((levelled) => squares(levelled, given)),
        );
        expect(squares(isotonic(given), given)).toBeCloseTo(best, 6);
      }),
    );
  });
});
