import { describe, expect, it } from 'vitest';
import { bestDay, smoothed, sureRuns } from '../../../src/answers/windows/sureness.js';

/** A season of so many days, sure by so much between two of them, the last included. */
const season = (from: number, to: number, sure = 1, otherwise = 0): Float64Array =>
  Float64Array.from({ length: 120 }, (_, day) => (day >= from && day <= to ? sure : otherwise));

describe('how sure dates are', () => {
  it('is the mean of the week around a date: one good day in a year is a seventh for three days to either side', () => {
    const shares = smoothed(season(50, 50));
    for (let day = 47; day <= 53; day++) expect(shares[day]).toBeCloseTo(1 / 7, 9);
    expect(shares[46]).toBe(0);
    expect(shares[54]).toBe(0);
  });

  it('makes a window of a week, and none of six days', () => {
    expect(sureRuns(season(30, 36), 0.8)).toEqual([{ from: 30, to: 36 }]);
    expect(sureRuns(season(30, 35), 0.8)).toEqual([]);
  });

  it('that is just what was asked for is enough', () => {
    expect(sureRuns(season(30, 40, 0.8), 0.8)).toEqual([{ from: 30, to: 40 }]);
  });
});

describe('the best date', () => {
  const bestOf = (sureness: Float64Array, atLeast = 0.5) => bestDay(sureness, sureRuns(sureness, atLeast), 'earliest');

  it('is the first with a sure week before it and a sure week after it', () => {
    expect(bestOf(season(30, 60))).toEqual({ day: 36, isEarliest: true });
    // 13.5 of the 15 days are nine tenths: on day 36 fourteen of them are sure, on day 35 thirteen.
    const [fourteen, thirteen] = [season(30, 43), season(30, 42)];
    expect(bestOf(fourteen)).toEqual({ day: 36, isEarliest: true });
    expect(bestOf(thirteen)!.isEarliest).toBe(false);
  });

  it('needs nine years of ten around it, and no more', () => {
    expect(bestOf(season(0, 119, 0.9000001))).toEqual({ day: 0, isEarliest: true });
    expect(bestOf(season(0, 119, 0.899))!.isEarliest).toBe(false);
  });
});
