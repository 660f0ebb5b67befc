import { describe, expect, it } from 'vitest';
import { germinationCurve } from '../../../src/germination/curve/curve.js';
import { cropCalled } from './make.js';

const { rows } = cropCalled('onion');
const copyOf = (all: typeof rows): typeof rows => all.map((row) => ({ ...row }));

describe('a crop’s curves, asked of again', () => {
  it('are the ones made before, and another limit’s or another crop’s their own', () => {
    expect(germinationCurve(rows, 42)).toBe(germinationCurve(rows, 42));
    expect(germinationCurve(rows, 42)).toEqual(germinationCurve(copyOf(rows), 42));
    for (const [maximumC, shiftC] of [
      [null, 0],
      [43, 0],
      [42, 2],
      [42, -2],
    ] as const) {
      expect(germinationCurve(rows, maximumC, shiftC)).not.toEqual(germinationCurve(rows, 42));
      expect(germinationCurve(rows, maximumC, shiftC)).toEqual(germinationCurve(copyOf(rows), maximumC, shiftC));
    }
    expect(germinationCurve(cropCalled('lettuce').rows, 42)).not.toEqual(germinationCurve(rows, 42));
  });

  it('are a bounded number, however many lots are asked of', () => {
    const first = germinationCurve(rows, 42, 0.5);
    for (let lot = 0; lot < 40; lot++) germinationCurve(rows, 42, lot / 10);
    const again = germinationCurve(rows, 42, 0.5);
    expect(again).not.toBe(first);
    expect(again).toEqual(first);
  });
});
