import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, type PlainDate } from '../../../src/basics/calendar.js';
import type { PlantingOut } from '../../../src/germination/growth.js';
import { type DaysOutdoors, firstPlantingOut, plantingOutGrades } from '../../../src/growth/planting-out.js';
import { hardenOffBefore, plantingOutOf, traySowing } from '../../../src/growth/tray-dates.js';
import { cropCalled } from '../germination/make.js';

const FIRST = '2001-01-01' as PlainDate;
const YEARS = 20;
const N = daysBetween(FIRST, '2021-01-01' as PlainDate);
const putOut = '2027-05-20' as PlainDate;
const site = { latitudeDeg: null };

/** Twenty years of nights of 12 and days of 24 °C, but in some years for these nights, by the days since 20 May. */
function past(
  night: (day: number) => number = () => 12,
  inYears = YEARS,
): DaysOutdoors & { minC: Float64Array; maxC: Float64Array } {
  const minC = new Float64Array(N).fill(12);
  for (let year = 0; year < inYears; year++) {
    const at = daysBetween(FIRST, `${2001 + year}-05-20` as PlainDate);
    for (let day = -10; day < 60; day++) minC[at + day] = night(day);
  }
  return { firstDate: FIRST, minC, maxC: minC.map((low) => low + 12), soilC: null };
}
const one = (onDay: number, tempC: number) => (day: number) => (day === onDay ? tempC : 12);
const gradeOf = (crop: string, days: ReturnType<typeof past>) =>
  plantingOutGrades(cropCalled(crop).plantingOut!, days, site)(putOut);

describe('plants from trays', () => {
  it('go out where no frost comes for their days: 45 for tomato at 0 °C, 30 for cabbage at -5 °C', () => {
    expect(gradeOf('tomato', past(one(44, 0)))).toBe('poor');
    expect(gradeOf('tomato', past(one(45, 0)))).toBe('good');
    expect(gradeOf('tomato', past(one(20, 0.1)))).toBe('good');
    expect(gradeOf('cabbage', past(one(29, -5)))).toBe('poor');
    expect(gradeOf('cabbage', past(one(30, -5)))).toBe('good');
    expect(gradeOf('cabbage', past(one(20, -4.9)))).toBe('good');
  });

  it('go out where that holds in sixteen years of twenty, and not in fifteen', () => {
    expect(gradeOf('tomato', past(one(20, -1), 4))).toBe('good');
    expect(gradeOf('tomato', past(one(20, -1), 5))).toBe('poor');
  });

  it('go out where the nights of two weeks are warm enough: pepper at 10 °C, better at 12.8', () => {
    const nights = (tempC: number) => past((day) => (day >= 0 && day < 14 ? tempC : 14));
    const warm = (days: ReturnType<typeof past>) => ({ ...days, soilC: days.minC.map(() => 20) });
    expect(gradeOf('pepper', warm(nights(9.9)))).toBe('poor');
    expect(gradeOf('pepper', warm(nights(10)))).toBe('fair');
    expect(gradeOf('pepper', warm(nights(12.7)))).toBe('fair');
    expect(gradeOf('pepper', warm(nights(12.9)))).toBe('good');
    // Thirteen nights of 10.5 °C and one of 1 °C are a fortnight of 9.8 °C.
    expect(gradeOf('pepper', warm(past((day) => (day === 13 ? 1 : 10.5))))).toBe('poor');
    // A cold fortnight after the first one is another matter.
    expect(gradeOf('pepper', warm(past((day) => (day >= 14 ? 9 : 14))))).toBe('good');
  });

  it('go out where the soil of the week is warm enough: tomato at 15.6 °C; a kelvin above the air for want of it', () => {
    const soil = (tempC: number) => ({ ...past(), soilC: new Float64Array(N).fill(tempC) });
    expect(gradeOf('tomato', soil(15.5))).toBe('poor');
    expect(gradeOf('tomato', soil(15.7))).toBe('good');
    const air = (maxC: number) => ({ ...past(), maxC: new Float64Array(N).fill(maxC) });
    expect(gradeOf('tomato', air(17.1))).toBe('poor');
    expect(gradeOf('tomato', air(17.3))).toBe('good');
  });

  it('stay in where celery would meet more than ten cold nights in thirty', () => {
    const cold = (nights: number) => past((day) => (day >= 0 && day < nights ? 9.9 : 12));
    expect(gradeOf('celery', cold(10))).toBe('good');
    expect(gradeOf('celery', cold(11))).toBe('poor');
  });

  it('are not put out on what nobody knows: fewer than three years, or nights that are missing', () => {
    const short = (years: number) => {
      const n = daysBetween(FIRST, `${2001 + years}-01-01` as PlainDate);
      const { minC, maxC } = past();
      return { firstDate: FIRST, minC: minC.slice(0, n), maxC: maxC.slice(0, n), soilC: null };
    };
    expect(gradeOf('tomato', short(3))).toBe('good');
    expect(gradeOf('tomato', short(2))).toBeNull();
    expect(gradeOf('tomato', { ...past(), minC: new Float64Array(N).fill(NaN) })).toBeNull();
    // A year of air alone says nothing of 12 January; nothing is planted on it.
    const grades = plantingOutGrades(cropCalled('tomato').plantingOut!, short(1), site);
    expect(firstPlantingOut(grades, '2027-01-01' as PlainDate)).toBeNull();
    const holed = (nights: number) => past((day) => (day >= 3 && day < 3 + nights ? NaN : 12));
    expect(gradeOf('tomato', holed(3))).toBe('good');
    expect(gradeOf('tomato', holed(4))).toBeNull();
  });

  it('never go out earlier for a later last frost, nor for colder nights', () => {
    const smooth = (frostDay: number, colderK: number) => {
      const minC = Float64Array.from(
        { length: N },
        (_, day) => 6 - colderK - 10 * Math.cos((2 * Math.PI * (day - 15)) / 365.25),
      );
      for (let year = 0; year < YEARS; year++)
        minC[daysBetween(FIRST, `${2001 + year}-01-01` as PlainDate) + frostDay] = -1;
      const days = { firstDate: FIRST, minC, maxC: minC.map((low) => low + 12), soilC: null };
      const grades = plantingOutGrades(cropCalled('tomato').plantingOut!, days, site);
      return firstPlantingOut(grades, '2027-01-01' as PlainDate) ?? ('9999-12-31' as PlainDate);
    };
    fc.assert(
      fc.property(
        fc.nat({ max: 150 }),
        fc.nat({ max: 30 }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (day, later, colderK) => {
          expect(smooth(day + later, 0) >= smooth(day, 0)).toBe(true);
          expect(smooth(day, colderK) >= smooth(day, 0)).toBe(true);
        },
      ),
      { numRuns: 25 },
    );
  });

  it('go out half a year later in the south, and on 28 February’s terms on the 29th', () => {
    const nights = Float64Array.from({ length: N }, (_, day) => 6 - 10 * Math.cos((2 * Math.PI * (day - 15)) / 365));
    const of = (minC: Float64Array) => ({ firstDate: FIRST, minC, maxC: minC.map((low) => low + 12), soilC: null });
    const needs: PlantingOut = cropCalled('tomato').plantingOut!;
    const north = firstPlantingOut(plantingOutGrades(needs, of(nights), site), '2027-01-01' as PlainDate)!;
    const turned = of(nights.map((_, day) => nights[(day + 182) % N]!));
    const south = firstPlantingOut(plantingOutGrades(needs, turned, site), '2027-07-01' as PlainDate)!;
    expect(Math.abs(daysBetween(addDays(north, 182), south))).toBeLessThanOrEqual(4);
    const grades = plantingOutGrades(cropCalled('cabbage').plantingOut!, of(nights), site);
    expect(grades('2028-02-29' as PlainDate)).toBe(grades('2028-02-28' as PlainDate));
  });
});

describe('dates of a tray', () => {
  it('are weeks before planting out, and a week and a day of hardening off ends on its eve', () => {
    expect(traySowing(cropCalled('tomato').plantingOut!, '2027-05-07' as PlainDate)).toBe('2027-03-26');
    expect(hardenOffBefore('2027-05-07' as PlainDate)).toEqual({ from: '2027-04-29', to: '2027-05-06' });
  });

  it('of a crop that no list tells of go by its hardiness; of one that is not moved there are none', () => {
    expect(plantingOutOf(cropCalled('carrot'))).toBeNull();
    expect(plantingOutOf(cropCalled('tomato'))).toBe(cropCalled('tomato').plantingOut);
    const { frost, nights } = plantingOutOf({ plantingOut: null, weeksInTrays: 4, frost: null })!;
    expect([frost.limitC, nights?.by]).toEqual([0, 'mean']);
    expect(plantingOutOf({ plantingOut: null, weeksInTrays: 4, frost: 'half-hardy' })!.frost.limitC).toBe(-2);
    expect(plantingOutOf({ plantingOut: null, weeksInTrays: 4, frost: 'hardy' })!.frost.limitC).toBe(-5);
  });
});
