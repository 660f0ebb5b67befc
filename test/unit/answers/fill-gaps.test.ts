import { describe, expect, it } from 'vitest';
import { fillGap, missingHours } from '../../../src/answers/soil/fill-gaps.js';

const swing = (days: number): Float64Array =>
  Float64Array.from({ length: 24 * days }, (_, hour) => 15 + 5 * Math.sin((2 * Math.PI * (hour - 9)) / 24));

describe('fillGap', () => {
  it('bridges up to three hours by a straight line', () => {
    const hourly = Float64Array.from([10, Number.NaN, Number.NaN, Number.NaN, 14]);
    fillGap(hourly, { fromH: 1, toH: 4 });
    expect([...hourly]).toEqual([10, 11, 12, 13, 14]);
  });

  it('repeats the swing of the days on either side through a longer gap', () => {
    const whole = swing(8);
    const holed = whole.slice().fill(Number.NaN, 60, 130);
    for (const gap of missingHours(holed)) fillGap(holed, gap);
    for (const [hour, tempC] of holed.entries()) expect(tempC).toBeCloseTo(whole[hour]!, 9);
  });

  it('goes over from the one side to the other', () => {
    const hourly = new Float64Array(24 * 9).fill(10, 0, 72).fill(Number.NaN, 72, 144).fill(20, 144);
    fillGap(hourly, { fromH: 72, toH: 144 });
    for (let hour = 73; hour < 144; hour++) expect(hourly[hour]!).toBeGreaterThan(hourly[hour - 1]!);
    expect(hourly[108]).toBeCloseTo(15, 0);
  });
});

describe('missingHours', () => {
  it('tells the stretches between known hours only', () => {
    const hourly = Float64Array.from([Number.NaN, 1, Number.NaN, Number.NaN, 2, 3, Number.NaN]);
    expect(missingHours(hourly)).toEqual([{ fromH: 2, toH: 4 }]);
  });
});
