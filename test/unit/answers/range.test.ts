import { describe, expect, it } from 'vitest';
import { rangeOf } from '../../../src/answers/range.js';

describe('rangeOf', () => {
  it('is a day wide where every hour was measured', () => {
    expect(rangeOf(96, 200, 'seasonal-drift')).toEqual({ fromH: 84, toH: 108 });
    expect(rangeOf(96, 0, 'refuse')).toEqual({ fromH: 84, toH: 108 });
  });

  it('widens only what was supposed after the last value, by the measured ratios', () => {
    // 15 supposed days after 5 measured ones: 0.76 to 1.27 of the 15 (our own comparison, see the docstring).
    const { fromH, toH } = rangeOf(20 * 24, 5 * 24, 'seasonal-drift');
    expect(fromH / 24).toBeCloseTo(5 + 15 * 0.76, 9);
    expect(toH / 24).toBeCloseTo(5 + 15 * 1.27, 9);
  });

  it('holds the forecast itself, never begins before the seed is wet, and comes later for what comes later', () => {
    for (const beyond of ['seasonal-drift', 'repeat-last-week'] as const) {
      let earlier = { fromH: 0, toH: 0 };
      for (let eventH = 1; eventH < 2000; eventH += 7) {
        const { fromH, toH } = rangeOf(eventH, 0, beyond);
        expect(fromH).toBeGreaterThanOrEqual(earlier.fromH);
        expect(toH).toBeGreaterThanOrEqual(earlier.toH);
        earlier = { fromH, toH };
        expect(fromH).toBeGreaterThanOrEqual(0);
        expect(fromH).toBeLessThanOrEqual(eventH);
        expect(toH).toBeGreaterThanOrEqual(eventH);
        expect(toH - fromH).toBeGreaterThanOrEqual(24 - 1e-9);
      }
    }
  });
});
