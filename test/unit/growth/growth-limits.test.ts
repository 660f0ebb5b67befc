import { describe, expect, it } from 'vitest';
import type { PlainDate } from '../../../src/basics/calendar.js';
import type { Growth, HeatHarvest } from '../../../src/germination/growth.js';
import { growthInYear } from '../../../src/growth/growth-in-year.js';
import { seasonDay } from '../../../src/growth/season-day.js';
import { plantingOutOf } from '../../../src/growth/tray-dates.js';
import { fromTray } from '../../../src/growth/tray-growth.js';
import { isTooWet, workableGround } from '../../../src/growth/workable-ground.js';
import { cropCalled } from '../germination/make.js';

const kinds = { early: 0.8, late: 1.2 };

/** A hardy crop that gains a unit for each kelvin above 0 °C. */
const growthOf = (heatUnitsCDays: number): Growth => ({
  seedlingFrostC: -5,
  leastSoilC: null,
  bedFactor: 1,
  patienceFactor: 1,
  harvest: {
    by: 'heat',
    baseTempC: 0,
    ceilingTempC: 100,
    heatUnitsCDays,
    countedFrom: 'emergence',
    leastPickingDays: 0,
    endFrostC: null,
    hotHarvestC: null,
  },
  boltingDayLengthH: null,
});

/** Its fate in air of 10 °C, ten units a day, from 1 January on. */
const fateOf = (units: number, sownDay: number, upDay: number, long: { first: number; last: number } | null = null) =>
  growthInYear(
    growthOf(units),
    {
      minC: new Float64Array(800).fill(5),
      meanC: new Float64Array(800).fill(10),
      firstDayOfYear: 1,
      latitudeDeg: 45,
    },
    kinds,
    long,
  )(sownDay, upDay).why;

describe('a crop in its year', () => {
  it('has 250 days to its harvest', () => {
    expect(fateOf(10 * 251, 0, 5)).toBeNull();
    expect(fateOf(10 * 252, 0, 5)).toBe('season-too-short');
  });

  it('stands over winter where it is sown from July on and ripe from February on', () => {
    const ripeOn = (day: number, sownDay: number) => fateOf(10 * (day - 184), sownDay, 185);
    const FEBRUARY = 365 + 31;
    expect(ripeOn(FEBRUARY, 181)).toBe('over-winter');
    expect(ripeOn(FEBRUARY, 180)).toBeNull();
    expect(ripeOn(FEBRUARY - 1, 181)).toBeNull();
  });

  it('bolts where days become long before a twentieth of its growth', () => {
    const longAfter = (days: number) => fateOf(1000, 0, 60, { first: 61 + days, last: 230 });
    expect(longAfter(4)).toBe('bolts');
    expect(longAfter(6)).toBeNull();
  });

  it('is spoilt by heat from a fortnight before its harvest on, and not by heat before', () => {
    const beet = cropCalled('beet').growth!;
    const hotOn = (day: number) => {
      const meanC = new Float64Array(300).fill(18);
      // One day so hot that any mean with it is above the limit; the ceiling keeps its units usual.
      meanC[day] = 500;
      const air = { minC: new Float64Array(300).fill(12), meanC, firstDayOfYear: 100, latitudeDeg: 40 };
      return growthInYear(beet, air, kinds, null)(0, 10);
    };
    expect(hotOn(71 - 14)).toMatchObject({ harvestDay: 71, why: 'heat-at-harvest' });
    expect(hotOn(71 - 15)).toMatchObject({ harvestDay: 71, why: null });
  });
});

describe('a plant from a tray', () => {
  it('has a tenth of its growth left at least', () => {
    const left = fromTray(growthOf(400), kinds, { ...cropCalled('celery').plantingOut!, weeksFromSowing: 20 });
    expect((left.growth.harvest as HeatHarvest).heatUnitsCDays).toBeCloseTo(40, 9);
  });

  it('bears what tomatoes bear where it is tender, and the frosts of its class where it is not', () => {
    const { frost, nights, leastSoilC } = cropCalled('tomato').plantingOut!;
    const ofClass = (one: 'tender' | 'half-hardy' | 'hardy') =>
      plantingOutOf({ plantingOut: null, weeksInTrays: 5, frost: one })!;
    expect(ofClass('tender')).toEqual({ frost, nights, leastSoilC, weeksFromSowing: 6 });
    // A month after planting out roots are in the ground, and the plant is no longer checked.
    expect(ofClass('half-hardy').frost).toEqual({ limitC: -2, days: 30 });
    expect(ofClass('hardy').frost).toEqual({ limitC: -5, days: 30 });
  });
});

describe('ground that can be worked', () => {
  const year = (minC: Float64Array, maxC: Float64Array) =>
    workableGround({ firstDate: '2027-01-01' as PlainDate, minC, maxC }, 50);

  it('has had 200 °C·d since midwinter: a hundred days of 2 °C', () => {
    expect(year(new Float64Array(365), new Float64Array(365).fill(4)).firstDay).toBe(99);
  });

  it('has no winter to warm from where the coldest month has 15 °C', () => {
    const constant = (tempC: number) => new Float64Array(365).fill(tempC);
    expect(year(constant(15), constant(15)).firstDay).toBe(0);
    expect(year(constant(14.9), constant(14.9)).firstDay).toBe(13);
    // Two days of 5 °C are no winter, a month is one.
    const withCold = (days: number) => constant(16).fill(5, 200, 200 + days);
    expect(year(withCold(2), withCold(2)).firstDay).toBe(0);
    expect(year(withCold(30), withCold(30)).firstDay).toBe(12);
  });

  it('dries as the fortnight around a day lets it: nothing evaporates in a day without a range', () => {
    const maxC = new Float64Array(365);
    maxC[200] = 20;
    const { evaporationMm } = year(new Float64Array(365), maxC);
    expect([192, 193, 207, 208].map((day) => evaporationMm[day]! > 0)).toEqual([false, true, true, false]);
  });

  it('is too wet below 1.9 mm a day in spring, and in spring alone', () => {
    const ground = (mm: number, firstDay = 0) => ({ firstDay, evaporationMm: new Float64Array(365).fill(mm) });
    expect(isTooWet(ground(1.9), 100, false)).toBe(false);
    expect(isTooWet(ground(1.89), 100, false)).toBe(true);
    expect(isTooWet(ground(1.89), 100, true)).toBe(false);
    expect([180, 181].map((day) => isTooWet(ground(5, 365), day, false))).toEqual([true, false]);
  });

  it('begins its year on 2 July in the south', () => {
    expect(seasonDay('2027-07-02' as PlainDate, -35)).toBe(0);
    expect(seasonDay('2027-07-01' as PlainDate, -35)).toBe(364);
  });
});
