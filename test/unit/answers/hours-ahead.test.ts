import { describe, expect, it } from 'vitest';
import { hoursAhead } from '../../../src/answers/ahead/hours-ahead.js';
import { yearsTold } from '../../../src/answers/ahead/past-soil.js';
import { zoneNamed } from '../../../src/basics/calendar.js';
import type { ReadSeries } from '../../../src/readings/read-series.js';
import { extraterrestrialMJ } from '../../../src/seedbed/sun/sun.js';

const siteAt = (latitude: number) => ({ zone: zoneNamed('UTC')!, latitude, longitude: 0, annualRainMm: null });
/** Days that swing by so much to either side of 10 °C. */
const days = (...swings: readonly number[]): Float64Array =>
  Float64Array.from({ length: 24 * swings.length }, (_, hour) => {
    return 10 + swings[Math.floor(hour / 24)]! * Math.sin((2 * Math.PI * hour) / 24);
  });
const swingOf = (hourlyC: Float64Array): number => (Math.max(...hourlyC) - Math.min(...hourlyC)) / 2;

describe('hours after the last value', () => {
  it('repeat the days of a week: today’s weekday comes again as it was', () => {
    const known = days(1, 2, 3, 4, 5, 6, 7, 8);
    const ahead = hoursAhead('repeat-last-week', known, 24 * 8, Date.UTC(2027, 4, 1), siteAt(52));
    const swings = Array.from({ length: 8 }, (_, day) => Math.round(swingOf(ahead.subarray(24 * day, 24 * day + 24))));
    expect(swings).toEqual([2, 3, 4, 5, 6, 7, 8, 2]);
  });

  it('swing with the season as the mean of the last week did, and not as the days before it', () => {
    const lastMs = Date.UTC(2027, 5, 21);
    // On midsummer the sun stands still, and the first day swings as the week did.
    const ofWeek = hoursAhead('seasonal-drift', days(50, 1, 1, 1, 1, 1, 1, 8), 24, lastMs, siteAt(52));
    expect(swingOf(ofWeek)).toBeCloseTo(2, 1);
    const ofOldest = hoursAhead('seasonal-drift', days(50, 8, 1, 1, 1, 1, 1, 1), 24, lastMs, siteAt(52));
    expect(swingOf(ofOldest)).toBeCloseTo(2, 1);
  });

  it('swing in the polar night as if there were 5 MJ of sun, so that a sun of 5 MJ doubles it', () => {
    const lastMs = Date.UTC(2027, 0, 10);
    const site = siteAt(80);
    const ahead = hoursAhead('seasonal-drift', days(1, 1, 1, 1, 1, 1, 1), 24 * 90, lastMs, site);
    const sunny = Array.from({ length: 90 }, (_, day) => day).find((day) => extraterrestrialMJ(80, 10 + day) >= 5)!;
    const day = ahead.subarray(24 * sunny, 24 * sunny + 24);
    expect(swingOf(ahead.subarray(0, 24))).toBeCloseTo(1, 2);
    expect(swingOf(day)).toBeGreaterThan(1.97);
    expect(swingOf(day)).toBeLessThan(2.13);
  });
});

describe('years that are told of', () => {
  const told = (nDays: number): number =>
    yearsTold([{ origin: 'measured', days: new Array(nDays) } as unknown as ReadSeries]);

  it('may lack twenty days each, and no more', () => {
    expect(told(365 - 19)).toBe(1);
    expect(told(365 - 20)).toBe(0);
  });
});
