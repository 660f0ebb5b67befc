import { describe, expect, it } from 'vitest';
import { fillFromModel } from '../../../src/answers/soil/fill-gaps.js';

const HOURS = 24 * 30;
const model = Float64Array.from(
  { length: HOURS },
  (_, hour) => 12 + hour / 100 + 4 * Math.sin((2 * Math.PI * (hour - 9)) / 24),
);
const filled = (fromH: number, toH: number, aboveK: (hour: number) => number) => {
  const hourly = model.map((tempC, hour) => (hour >= fromH && hour < toH ? NaN : tempC + aboveK(hour)));
  return {
    done: fillFromModel(hourly, { fromH, toH }, model),
    above: hourly.map((tempC, hour) => tempC - model[hour]!),
  };
};

describe('fillFromModel', () => {
  it('runs straight over up to three hours', () => {
    const hourly = model.slice();
    hourly.fill(NaN, 100, 103);
    fillFromModel(hourly, { fromH: 100, toH: 103 }, model);
    expect(hourly[101]).toBeCloseTo((model[99]! + model[103]!) / 2, 9);
  });

  it('keeps the model’s course over up to a day, and runs the difference straight', () => {
    const { above } = filled(100, 120, (hour) => (hour < 110 ? 1 : 3));
    expect(above[99]).toBeCloseTo(1, 9);
    expect(above[109]).toBeCloseTo(1 + (2 * 10) / 21, 9);
    expect(above[120]).toBeCloseTo(3, 9);
  });

  it('lets the difference fade from either side over longer gaps, by 0.85 a day', () => {
    const { above } = filled(200, 440, (hour) => (hour < 300 ? 2 : 1));
    expect(above[200]).toBeCloseTo(2, 1);
    expect(above[439]).toBeCloseTo(1, 1);
    expect(above[319]).toBeCloseTo(1.5 * 0.85 ** 5, 1);
    const short = filled(200, 230, () => 2).above;
    for (const one of short) expect(one).toBeLessThanOrEqual(2 + 1e-9);
  });

  it('leaves gaps of over fourteen days, and those that the model does not span, to others', () => {
    expect(filled(100, 100 + 14 * 24 + 1, () => 1).done).toBe(false);
    const hourly = model.slice();
    hourly.fill(NaN, 100, 150);
    const silent = model.slice();
    silent[120] = NaN;
    expect(fillFromModel(hourly, { fromH: 100, toH: 150 }, silent)).toBe(false);
    expect(hourly.subarray(100, 150).every(Number.isNaN)).toBe(true);
  });
});
