import { describe, expect, it } from 'vitest';
import { dayLengthH } from '../../../src/seedbed/sun/day-length.js';
import { declinationDeg, equationOfTimeMin, sunriseMinUtc } from '../../../src/seedbed/sun/solar-position.js';

const year = Array.from({ length: 365 }, (_, i) => i + 1);

describe('where the sun stands', () => {
  it('is over the tropics in June and December, and over the equator in March and September', () => {
    // Any almanac: 23.44° on 20 to 22 June and 20 to 22 December, 0 on 20 March and 22 to 23 September.
    const declinations = year.map((day) => declinationDeg(day));
    const north = Math.max(...declinations);
    const south = Math.min(...declinations);
    expect(north).toBeCloseTo(23.44, 1);
    expect(south).toBeCloseTo(-23.44, 1);
    expect(Math.abs(declinations.indexOf(north) + 1 - 172)).toBeLessThanOrEqual(1);
    expect(Math.abs(declinations.indexOf(south) + 1 - 355)).toBeLessThanOrEqual(1);
    expect(Math.abs(declinationDeg(79))).toBeLessThan(0.6);
    expect(Math.abs(declinationDeg(266))).toBeLessThan(0.6);
  });

  it('puts sundials a quarter of an hour behind in February and ahead in November', () => {
    // Any almanac: -14.2 min about 11 February, +16.4 min about 3 November.
    const minutes = year.map((day) => equationOfTimeMin(day));
    expect(Math.min(...minutes)).toBeCloseTo(-14.3, 0.5);
    expect(minutes.indexOf(Math.min(...minutes)) + 1).toBeCloseTo(42, -1);
    expect(Math.max(...minutes)).toBeCloseTo(16.4, 0.5);
    expect(minutes.indexOf(Math.max(...minutes)) + 1).toBeCloseTo(307, -1);
  });
});

describe('sunrise', () => {
  it('is half a day’s length before the sun is highest, within three minutes of another formula', () => {
    for (const latitude of [-45, -20, 0, 20, 45, 55]) {
      for (const day of [1, 80, 172, 266, 355]) {
        const noon = 720 - equationOfTimeMin(day);
        const lengthH = (noon - sunriseMinUtc(latitude, 0, day)) / 30;
        expect(Math.abs(lengthH - dayLengthH(latitude, day)), `${latitude}° on day ${day}`).toBeLessThan(0.1);
      }
    }
  });

  it('comes four minutes later for each degree further west', () => {
    expect(sunriseMinUtc(44, -30, 120) - sunriseMinUtc(44, 0, 120)).toBeCloseTo(120, 9);
  });

  it('is noon in polar night, and the midnight before it in polar day', () => {
    expect(sunriseMinUtc(80, 0, 355)).toBeCloseTo(720 - equationOfTimeMin(355), 9);
    expect(sunriseMinUtc(80, 0, 172)).toBeCloseTo(-equationOfTimeMin(172), 9);
  });
});
