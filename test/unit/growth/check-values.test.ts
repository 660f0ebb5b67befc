import { describe, expect, it } from 'vitest';
import type { Crop } from '../../../src/germination/crop.js';
import type { BulbHarvest, HeatHarvest } from '../../../src/germination/growth.js';
import { bulbYear } from '../../../src/growth/bulb-year.js';
import { dayUnits } from '../../../src/growth/day-units.js';
import { evaporationMm } from '../../../src/growth/evaporation.js';
import { NOTHING } from '../../../src/growth/fate.js';
import { frostAhead } from '../../../src/growth/frost-ahead.js';
import { growthInYear } from '../../../src/growth/growth-in-year.js';
import { harvestDays } from '../../../src/growth/harvest-days.js';
import { heatSums } from '../../../src/growth/heat-sums.js';
import { longDays } from '../../../src/growth/long-days.js';
import { meanOver, sumsUpTo } from '../../../src/growth/mean-over.js';
import { seasonDayOf } from '../../../src/growth/season-day.js';
import { extraterrestrialMJ } from '../../../src/seedbed/sun/sun.js';
import { cropCalled } from '../germination/make.js';

const heatOf = ({ growth }: Crop): HeatHarvest => growth!.harvest as HeatHarvest;

/** Days from emergence to the first harvest in air of one warmth. */
function daysAt(meanC: number, crop: string): number {
  const { baseTempC, ceilingTempC, heatUnitsCDays } = heatOf(cropCalled(crop));
  return harvestDays(heatSums(new Float64Array(300).fill(meanC), baseTempC, ceilingTempC), heatUnitsCDays)[0]! + 1;
}

describe('heat units', () => {
  it.each([
    [18, 4.4, 24, 13.6],
    [22, 10, 29, 12],
    [35, 10, 30, 20],
    [3, 4.4, 24, 0],
  ])('of a day of %d °C over %d and under %d °C are %d', (meanC, base, ceiling, units) => {
    expect(dayUnits(meanC, base, ceiling)).toBeCloseTo(units, 9);
  });

  it.each([
    ['beet', 18, 62],
    ['lettuce', 18, 46],
    ['carrot', 18, 78],
    ['snap-bean', 22, 42],
    ['sweet-corn', 35, 38],
  ])('make %s at %d °C ready %d days after it is up', (crop, meanC, days) => {
    expect(daysAt(meanC, crop)).toBe(days);
  });

  // Snap bean: 800 to 1160 °F·d over 50 °F from sowing at Corvallis; pea: 1250 °F·d over 40 °F, fastest kinds, Delaware; sweet corn
  // 'Jubilee': 1539 °F·d over 50 °F from sowing. From emergence on fewer are needed.
  it.each([
    ['snap-bean', 444, 644],
    ['pea', 694, 1100],
    ['sweet-corn', 600, 855],
  ])('of %s lie where other trials found them', (crop, from, to) => {
    expect(heatOf(cropCalled(crop)).heatUnitsCDays).toBeGreaterThan(from);
    expect(heatOf(cropCalled(crop)).heatUnitsCDays).toBeLessThan(to);
  });

  it('are never told across a day that is not known', () => {
    const sums = heatSums([10, NaN, 10, 10], 0, 30);
    expect([...harvestDays(sums, 10)]).toEqual([0, NaN, NaN, NaN, NaN]);
    expect([...harvestDays(sums, 15)]).toEqual([NaN, NaN, NaN, NaN, NaN]);
  });
});

describe('long days', () => {
  it.each([
    [40.05, 5, 20],
    [42.44, 5, 14],
    [48.31, 5, 2],
  ])('of 14.5 h begin at %d° north in month %i on day %i', (latitude, month, day) => {
    const first = new Date(Date.UTC(2027, 0, longDays(latitude, 14.5)!.first));
    expect([first.getUTCMonth() + 1, first.getUTCDate()]).toEqual([month, day]);
  });

  it('never come at 30.62° north, and half a year later in the south', () => {
    expect(longDays(30.62, 14.5)).toBeNull();
    const [north, south] = [longDays(40, 14.5)!, longDays(-40, 14.5)!];
    expect(south.first - north.first).toBeGreaterThan(176);
    expect(south.first - north.first).toBeLessThan(190);
    expect(south.last).toBeLessThan(south.first);
  });
});

describe('evaporation', () => {
  it.each([
    [2, 12, 44.42, 60, 8.69, 1.568],
    [0, 10, 40.05, 86, 12.35, 2.048],
  ])('of a day of %d to %d °C at %d° on day %i, with %d mm of sun, is %d mm', (min, max, latitude, day, sunMm, mm) => {
    expect(extraterrestrialMJ(latitude, day) / 2.45).toBeCloseTo(sunMm, 1);
    expect(evaporationMm(min, max, latitude, day)).toBeCloseTo(mm, 2);
  });
});

describe('what ends a crop', () => {
  const warm = (n: number, meanC = 18) => ({
    minC: new Float64Array(n).fill(meanC - 6),
    meanC: new Float64Array(n).fill(meanC),
    firstDayOfYear: 100,
    latitudeDeg: 40,
  });
  const kinds = { early: 0.8, late: 1.2 };
  const fateOf = (crop: string, air: ReturnType<typeof warm>, up = 10, long = null) =>
    growthInYear(cropCalled(crop).growth!, air, kinds, long)(0, up);

  it('is counted in days ahead', () => {
    expect([...frostAhead([5, 0, 5], 0)]).toEqual([1, 0, Infinity, Infinity]);
    expect(meanOver(sumsUpTo([1, 2, 3]), 1, 3)).toBe(2.5);
  });

  it('is nothing in even warmth: a beet is picked 61 days after the day it came up', () => {
    expect(fateOf('beet', warm(300))).toMatchObject({ why: null, harvestDay: 71, endDay: NaN });
  });

  it('is a frost that the seedling does not bear, within 30 days', () => {
    for (const [day, why] of [
      [10, 'frost-on-seedling'],
      [39, 'frost-on-seedling'],
      [9, null],
      [40, null],
    ] as const) {
      const air = warm(300);
      air.minC[day] = -4;
      expect(fateOf('beet', air).why, String(day)).toBe(why);
      air.minC[day] = -3.9;
      expect(fateOf('beet', air).why).toBeNull();
    }
  });

  it('is a frost between half of the growth and the last day of the least picking', () => {
    // Snap bean: 495 °C·d at 22 °C are 42 days, half of them 21, picked for 14.
    for (const [day, why] of [
      [30 + 0, 'frost-on-seedling'],
      [10 + 41, 'frost-before-harvest'],
      [10 + 41 + 13, 'frost-before-harvest'],
      [10 + 41 + 14, null],
    ] as const) {
      const air = warm(300, 22);
      air.minC[day] = 0;
      expect(fateOf('snap-bean', air).why, String(day)).toBe(why);
    }
  });

  it('is the frost for late kinds too: they are picked up to its eve, not in the next year', () => {
    const air = warm(400, 22);
    air.minC[67] = 0;
    air.meanC.fill(2, 67, 300);
    // Ripe on day 51 and picked to day 64; kinds half as slow again would be ripe on day 72, after the frost of day 67.
    const slow = growthInYear(cropCalled('snap-bean').growth!, air, { early: 0.8, late: 1.5 }, null)(0, 10);
    expect(slow).toMatchObject({ why: null, harvestDay: 51, lateDay: 66 });
  });

  it('is heat at the harvest, and not before', () => {
    const spoilt = warm(300);
    spoilt.meanC.fill(30, 57, 72);
    // Ripe sooner for the heat itself.
    expect(fateOf('beet', spoilt).why).toBe('heat-at-harvest');
    const early = warm(300);
    early.meanC.fill(30, 15, 30);
    expect(fateOf('beet', early).why).toBeNull();
  });

  it('is a season in which the heat does not come together', () => {
    expect(fateOf('beet', warm(400, 6)).why).toBe('season-too-short');
    expect(fateOf('beet', warm(100, 6)).why).toBeUndefined();
  });

  it('is a winter, for what was sown in summer and is ripe after January', () => {
    const autumn = { ...warm(300, 8), firstDayOfYear: 260 };
    // 840 °C·d at 3.6 a day are 234 days: ripe in May.
    expect(fateOf('beet', autumn).why).toBe('over-winter');
    expect(fateOf('beet', { ...autumn, firstDayOfYear: 60 }).why).toBeNull();
  });

  it('is the length of the day for a bulb that has too few days to make leaves', () => {
    const onion = cropCalled('onion').growth!.harvest as BulbHarvest;
    // 1 July, less 45 days, is 17 May: day 137 of the year.
    const upOn = (ofYear: number, minC = 5) =>
      bulbYear(onion, {
        minC: new Float64Array(400).fill(minC),
        meanC: new Float64Array(400),
        firstDayOfYear: ofYear,
        latitudeDeg: 44,
      })({ ...NOTHING, why: null }, 0, 0).why;
    expect(upOn(137)).toBeNull();
    expect(upOn(138)).toBe('day-length');
    expect(upOn(243)).toBe('day-length');
    expect(upOn(244)).toBeNull();
    expect(upOn(244, -10)).toBe('frost-before-harvest');
  });

  it('comes half a year later in the south', () => {
    expect(seasonDayOf(1, 40)).toBe(0);
    expect(seasonDayOf(183, -40)).toBe(0);
    expect(seasonDayOf(1, -40)).toBe(183);
  });
});
