import { describe, expect, it } from 'vitest';
import { fillFromModel, fillGap } from '../../../src/answers/soil/fill-gaps.js';
import { soilUncertaintyK } from '../../../src/answers/soil/soil-range.js';

const HOURS = 24 * 40;
const FROM_H = 24 * 10;

describe('a hole in readings', () => {
  it('of four hours at the day’s peak is no longer straight', () => {
    const whole = Float64Array.from({ length: HOURS }, (_, h) => 15 + 5 * Math.cos((2 * Math.PI * (h - 2)) / 24));
    const filled = (hours: number): Float64Array => {
      const holed = whole.slice().fill(NaN, FROM_H, FROM_H + hours);
      fillGap(holed, { fromH: FROM_H, toH: FROM_H + hours });
      return holed;
    };
    expect(filled(4)[FROM_H + 2]).toBeCloseTo(whole[FROM_H + 2]!, 9);
    expect(filled(3)[FROM_H + 2]).toBeLessThan(whole[FROM_H + 2]! - 0.1);
  });

  /** The hours filled where all readings are 2 K above the model; null: it is too long. */
  const differences = (hours: number): Float64Array | null => {
    const modelC = new Float64Array(HOURS).fill(10);
    const hourlyC = new Float64Array(HOURS).fill(12).fill(NaN, FROM_H, FROM_H + hours);
    if (!fillFromModel(hourlyC, { fromH: FROM_H, toH: FROM_H + hours }, modelC)) return null;
    return hourlyC.subarray(FROM_H, FROM_H + hours).map((tempC) => tempC - 10);
  };

  it('of a day at most keeps the whole difference from the model, a longer one forgets some of it', () => {
    expect(Math.min(...differences(24)!)).toBe(2);
    expect(Math.min(...differences(25)!)).toBeLessThan(1.95);
  });

  it('of two days has 0.85 of the difference a day from either side', () => {
    expect(differences(47)![23]).toBeCloseTo(2 * 0.85, 9);
  });

  it('of up to a fortnight is filled from the model', () => {
    expect(differences(14 * 24)).not.toBeNull();
    expect(differences(14 * 24 + 1)).toBeNull();
  });
});

describe('doubt of the soil', () => {
  it('counts from 0.35 K on: below that a thermometer’s own error, 0.2 K, and its place make most of it', () => {
    const widthOf = (sdK: number): number => soilUncertaintyK(null, Float64Array.of(sdK), 240)[0]!;
    expect(widthOf(0.34)).toBe(0);
    expect(widthOf(0.36)).toBeGreaterThan(0.4);
  });
});
