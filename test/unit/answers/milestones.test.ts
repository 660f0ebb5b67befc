import { describe, expect, it } from 'vitest';
import { milestoneOf, slowerBy } from '../../../src/answers/forecast/milestones.js';
import { addDays, daysBetween, type PlainDate } from '../../../src/basics/calendar.js';

const SOWN = '2026-11-01' as PlainDate;
/** Half of the progress is made in two weeks of autumn; then a frozen winter of 110 days, and 3 % of it a day from there on. */
const hourlyC = Float64Array.from({ length: 24 * 300 }, (_, hour) => {
  const day = hour / 24;
  return day < 14 ? 10 : day < 124 ? 0 : 12;
});
const rateOf = (tempC: number): number => (tempC <= 0 ? 0 : tempC === 10 ? 0.5 / (14 * 24) : 0.03 / 24);
const clock = {
  waitH: 0,
  countH: 24 * 300,
  bedTimeFactor: { from: 1, to: 2 },
  dated: (hour: number) => addDays(SOWN, Math.floor(hour / 24)),
  slowerH: slowerBy(hourlyC, rateOf),
};
const range = (hour: number) => ({ fromH: hour - 48, toH: hour + 48, isOpen: true });

describe('a slow bed', () => {
  it('that lay over winter wakes in spring as others do: its days are not multiplied', () => {
    // Up on day 141: half in autumn, half in 17 days of spring. Twice the progress takes 33 days more; twice the days end in August.
    const { date, inBeds } = milestoneOf(24 * 141, range(24 * 141), clock);
    expect(daysBetween(date, inBeds.to)).toBeGreaterThan(30);
    expect(daysBetween(date, inBeds.to)).toBeLessThan(37);
  });

  it('is so many times the days where that adds a month or less, and where what comes is not known', () => {
    expect(milestoneOf(24 * 10, range(24 * 10), clock).inBeds.to).toBe(addDays(SOWN, 20));
    expect(slowerBy(hourlyC, rateOf)(24 * 290, 20)).toBeNull();
  });
});
