import { sampleCorrelation } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { addDays, daysBetween, type PlainDate } from '../../../../src/basics/calendar.js';
import { type TypicalMonths, typicalYears } from '../../../../src/climate/world/typical-years.js';

const wave = (mean: number, amplitude: number): number[] =>
  Array.from({ length: 12 }, (_, month) => mean - amplitude * Math.cos((2 * Math.PI * (month + 0.5)) / 12));
const MONTHS: TypicalMonths = { meanMaxC: wave(15, 12), meanMinC: wave(4, 10), sdK: wave(4, -1) };
const LEVEL: TypicalMonths = {
  meanMaxC: new Array(12).fill(20),
  meanMinC: new Array(12).fill(8),
  sdK: new Array(12).fill(4),
};
const means = ({ minC, maxC }: { minC: Float64Array; maxC: Float64Array }) =>
  minC.map((min, day) => (min + maxC[day]!) / 2);
const mean = (values: ArrayLike<number>): number =>
  Array.from(values).reduce((sum, one) => sum + one, 0) / values.length;
function sdAndLag1(values: Float64Array): { sd: number; lag1: number } {
  const middle = mean(values);
  const off = values.map((value) => value - middle);
  const variance = mean(off.map((one) => one * one));
  return { sd: Math.sqrt(variance), lag1: mean(off.slice(1).map((one, i) => one * off[i]!)) / variance };
}

describe('typical years', () => {
  test('are the same for the same place, others for another', () => {
    const years = typicalYears(MONTHS, 44, -30, 2025);
    expect(typicalYears(MONTHS, 44.001, -30.001, 2025)).toEqual(years);
    expect(typicalYears(MONTHS, 44.02, -30, 2025).minC[0]).not.toBe(years.minC[0]);
  });

  test('are thirty whole calendar years', () => {
    const { firstDate, minC, maxC } = typicalYears(MONTHS, 44, -30, 2025);
    expect(firstDate).toBe('1996-01-01');
    expect(addDays(firstDate, minC.length - 1)).toBe('2025-12-31');
    expect(maxC).toHaveLength(minC.length);
    expect(minC.every((min, day) => min < maxC[day]!)).toBe(true);
  });

  test('have the same weather on a date in their nth year, whatever its number', () => {
    const [one, other] = [typicalYears(MONTHS, 44, -30, 2025), typicalYears(MONTHS, 44, -30, 2026)];
    for (const monthDay of ['01-01', '02-28', '03-01', '12-31']) {
      for (const n of [0, 3, 29]) {
        const at = (first: number, firstDate: PlainDate) =>
          daysBetween(firstDate, `${first + n}-${monthDay}` as PlainDate);
        expect(one.minC[at(1996, one.firstDate)]).toBe(other.minC[at(1997, other.firstDate)]);
      }
    }
  });

  test('have the means of the months that they are made from', () => {
    const { firstDate, minC, maxC } = typicalYears(MONTHS, 44, -30, 2025);
    for (let month = 0; month < 12; month++) {
      const days = Array.from(minC.keys()).filter((day) => Number(addDays(firstDate, day).slice(5, 7)) === month + 1);
      expect(Math.abs(mean(days.map((day) => maxC[day]!)) - MONTHS.meanMaxC[month]!)).toBeLessThan(0.15);
      expect(Math.abs(mean(days.map((day) => minC[day]!)) - MONTHS.meanMinC[month]!)).toBeLessThan(0.15);
    }
  });

  // Means of 13 stations of the U.S. Climate Reference Network.
  test('spread about them, day by day, as stations do', () => {
    const years = typicalYears(LEVEL, 10, 20, 2025);
    const ofMean = sdAndLag1(means(years));
    expect(Math.abs(ofMean.sd - 4)).toBeLessThan(0.15);
    expect(Math.abs(ofMean.lag1 - 0.71)).toBeLessThan(0.03);
    const ofHalfRange = sdAndLag1(years.maxC.map((max, day) => (max - years.minC[day]!) / 2));
    // By the regression over their months: 1.313 + 0.067 * 4 + 0.129 * 6 - 0.025 * 14.
    expect(Math.abs(ofHalfRange.sd - 2.005)).toBeLessThan(0.08);
    expect(Math.abs(ofHalfRange.lag1 - 0.43)).toBeLessThan(0.03);
  });

  // As at those stations: 0.25 in June, -0.1 at midwinter.
  test.each([
    ['north', 45, '06'],
    ['south', -45, '12'],
  ] as const)('are brighter when they are warm in summer, in the %s', (_, latitude, summer) => {
    const { firstDate, minC, maxC } = typicalYears(LEVEL, latitude, 20, 2025);
    const correlationIn = (month: string): number => {
      const days = Array.from(minC.keys()).filter((day) => addDays(firstDate, day).slice(5, 7) === month);
      const middles = days.map((day) => (maxC[day]! + minC[day]!) / 2);
      const halves = days.map((day) => (maxC[day]! - minC[day]!) / 2);
      return sampleCorrelation(middles, halves);
    };
    expect(Math.abs(correlationIn(summer) - 0.26)).toBeLessThan(0.1);
    expect(Math.abs(correlationIn(summer === '06' ? '12' : '06') + 0.05)).toBeLessThan(0.1);
  });

  test('spread less about the course of a year that rises and falls by much', () => {
    const steep = { ...LEVEL, meanMaxC: wave(20, 20), meanMinC: wave(8, 20) };
    const { firstDate, minC, maxC } = typicalYears(steep, 10, 20, 2025);
    const monthly = (month: string) => {
      const days = Array.from(minC.keys()).filter((day) => addDays(firstDate, day).slice(5, 7) === month);
      return sdAndLag1(Float64Array.from(days, (day) => (maxC[day]! + minC[day]!) / 2)).sd;
    };
    // About the month's mean April spreads as it was told to, with its rise of some 10 degrees in it.
    expect(Math.abs(monthly('04') - 4)).toBeLessThan(0.35);
    expect(Math.abs(monthly('07') - 4)).toBeLessThan(0.35);
  });

  test('swing less where the range is small, and at least by a degree', () => {
    const damp = { ...LEVEL, meanMaxC: new Array(12).fill(12), meanMinC: new Array(12).fill(9.8) };
    const { minC, maxC } = typicalYears(damp, 10, 20, 2025);
    const half = maxC.map((max, day) => (max - minC[day]!) / 2);
    expect(Math.abs(sdAndLag1(half).sd - 0.45)).toBeLessThan(0.02);
    expect(Math.min(...half)).toBeCloseTo(0.5, 12);
    const level = { ...LEVEL, sdK: new Array(12).fill(0.3) };
    expect(Math.abs(sdAndLag1(means(typicalYears(level, 10, 20, 2025))).sd - 0.8)).toBeLessThan(0.03);
  });
});
