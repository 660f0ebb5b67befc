import { describe, expect, it } from 'vitest';
import { germinationCurve } from '../../../src/germination/curve.js';
import { cropCalled } from './make.js';

const { rows } = cropCalled('lettuce');
const copyOf = (all: typeof rows): typeof rows => all.map((row) => ({ ...row }));

describe('a crop’s curves, asked of again', () => {
  it('are the ones made before, and another limit’s or another crop’s their own', () => {
    expect(germinationCurve(rows, 30)).toBe(germinationCurve(rows, 30));
    expect(germinationCurve(rows, 30)).toEqual(germinationCurve(copyOf(rows), 30));
    for (const [maximumC, shiftC] of [
      [null, 0],
      [29, 0],
      [30, 2],
      [30, -2],
    ] as const) {
      expect(germinationCurve(rows, maximumC, shiftC)).not.toEqual(germinationCurve(rows, 30));
      expect(germinationCurve(rows, maximumC, shiftC)).toEqual(germinationCurve(copyOf(rows), maximumC, shiftC));
    }
    expect(germinationCurve(cropCalled('onion').rows, 30)).not.toEqual(germinationCurve(rows, 30));
  });

  it('are a bounded number, however many lots are asked of', () => {
    const first = germinationCurve(rows, 30, 0.5);
    for (let lot = 0; lot < 40; lot++) germinationCurve(rows, 30, lot / 10);
    const again = germinationCurve(rows, 30, 0.5);
    expect(again).not.toBe(first);
    expect(again).toEqual(first);
  });
});
