import { describe, expect, it } from 'vitest';
import type { PastSoil } from '../../../src/answers/ahead/past-soil.js';
import { yearsBefore } from '../../../src/answers/ahead/past-soil.js';
import { yearsAhead } from '../../../src/answers/ahead/years-ahead.js';
import { addDays, DAY_MS, fixedZone, HOUR_MS, type PlainDate, startOfDay } from '../../../src/basics/calendar.js';
import { yearCourse } from '../../../src/climate/year-course.js';

const zone = fixedZone(-120);
const site = { zone, latitude: 44, longitude: -30, annualRainMm: null };
const TODAY = '2027-05-10' as PlainDate;
const YEARS = 5;
const firstDate = `${2027 - YEARS}-01-01` as PlainDate;
const startMs = startOfDay(firstDate, zone);
const nHours = Math.round((startOfDay(TODAY, zone) - startMs) / HOUR_MS);

/** Soil that follows the season's wave and nothing else, the day's swing with it. */
const seasonC = (hour: number): number =>
  12 - 8 * Math.cos((2 * Math.PI * (hour / 24 - 30)) / 365.2425) + 3 * Math.sin((2 * Math.PI * ((hour % 24) - 9)) / 24);

function pastOf(hourlyC: Float64Array): PastSoil {
  const daily = Float64Array.from({ length: Math.floor(hourlyC.length / 24) }, (_, day) =>
    hourlyC.subarray(24 * day, 24 * day + 24).reduce((sum, tempC) => sum + tempC / 24, 0),
  );
  return {
    startMs,
    hourlyC,
    course: yearCourse(
      Float64Array.from(daily, (_, day) => day),
      daily,
    ),
    years: YEARS,
    comingC: new Float64Array(),
    air: null,
    isUsual: false,
    sdK: 1,
    assumptions: [],
    warnings: [],
  };
}

const plain = Float64Array.from({ length: nHours }, (_, hour) => seasonC(hour));
const AHEAD_H = 90 * 24;
const now = (knownC: Float64Array, comingC = new Float64Array()) => ({
  lastMs: startMs + nHours * HOUR_MS,
  knownC,
  comingC,
});

describe('past years that go on from today’s soil', () => {
  it('go on as the season does where every year was alike, from whichever week each is started', () => {
    const ahead = yearsAhead(pastOf(plain), now(plain), site)!;
    expect(ahead.years).toBe(YEARS);
    expect(ahead.members(AHEAD_H).length).toBe(5 * YEARS);
    for (const member of ahead.members(AHEAD_H)) {
      for (let hour = 0; hour < AHEAD_H; hour += 37) expect(member[hour]!).toBeCloseTo(seasonC(nHours + hour), 0);
    }
  });

  it('begin 3 K warmer where today is, and forget it in weeks: 1/e of it is left after eight days', () => {
    const warmToday = plain.map((tempC, hour) => (hour >= nHours - 24 ? tempC + 3 : tempC));
    const [usual, warm] = [plain, warmToday].map((knownC) =>
      yearsAhead(pastOf(plain), now(knownC), site)!.usual(AHEAD_H),
    );
    const left = (day: number): number => warm![24 * day + 12]! - usual![24 * day + 12]!;
    expect(left(0)).toBeCloseTo(3 * Math.exp(-1 / 8), 6);
    expect(left(7)).toBeCloseTo(3 / Math.E, 6);
    expect(left(60)).toBeLessThan(0.01);
  });

  it('follow the coming days as far as they are trusted, and fade from them', () => {
    const comingC = Float64Array.from({ length: 5 * 24 }, (_, hour) => seasonC(nHours + hour) + 4);
    const [usual, coming] = [new Float64Array(), comingC].map((days) =>
      yearsAhead(pastOf(plain), now(plain, days), site)!.usual(AHEAD_H),
    );
    const above = (day: number): number => coming![24 * day + 12]! - usual![24 * day + 12]!;
    expect(above(0)).toBeCloseTo(4, 0);
    expect(above(4)).toBeCloseTo(0.8 * 4, 0);
    expect(above(6)).toBeLessThan(above(4));
    expect(above(60)).toBeLessThan(0.02);
  });

  it('leave out a year of which nothing is known just then', () => {
    const holed = plain.slice();
    const from = Math.round((startOfDay(addDays('2025-05-10' as PlainDate, -20), zone) - startMs) / HOUR_MS);
    holed.fill(NaN, from, from + 40 * 24);
    expect(yearsAhead({ ...pastOf(plain), hourlyC: holed }, now(plain), site)!.years).toBe(YEARS - 1);
    expect(yearsAhead({ ...pastOf(plain), startMs: startMs + nHours * HOUR_MS - DAY_MS }, now(plain), site)).toBeNull();
  });

  it('count years by the calendar: the day before 1 March stays so', () => {
    expect(yearsBefore('2028-02-29' as PlainDate, 1)).toBe('2027-02-28');
    expect(yearsBefore('2028-02-29' as PlainDate, 4)).toBe('2024-02-29');
  });
});
