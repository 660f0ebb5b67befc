import { describe, expect, it } from 'vitest';
import { climatologicalOn, yearCourse } from '../../../src/climate/year-course.js';

const YEAR = 365.2425;
const turn = (day: number): number => (2 * Math.PI * day) / YEAR;
const usual = (day: number): number => 11 + 10 * Math.cos(turn(day - 205)) + 1.5 * Math.sin(2 * turn(day));
/** Winter days lie twice as far from the usual as summer days. */
const variance = (day: number): number => 10 + 6 * Math.cos(turn(day));
const days = (years: number): number[] => Array.from({ length: Math.round(years * YEAR) }, (_, i) => i);
/** To either side in turn: far enough from any wave of the year. */
const side = (day: number): number => (day % 2 === 0 ? 1 : -1);

describe('yearCourse', () => {
  const ten = days(10);
  const values = ten.map((day) => usual(day) + side(day) * Math.sqrt(variance(day)));

  it('finds the course that values were made with', () => {
    const course = yearCourse(ten, values);
    for (const day of [0, 90, 180, 270, 360]) {
      expect(climatologicalOn(course, day)).toBeCloseTo(usual(day), 1);
    }
  });

  it('says the same of the same day in any year', () => {
    const course = yearCourse(ten, values);
    expect(climatologicalOn(course, 100 + 20 * YEAR)).toBeCloseTo(climatologicalOn(course, 100), 9);
  });

  it('leaves out what is missing', () => {
    const holes = values.map((value, day) => (day % 7 === 0 || (day > 900 && day < 1000) ? NaN : value));
    const course = yearCourse(ten, holes);
    for (const day of [50, 205]) {
      expect(climatologicalOn(course, day)).toBeCloseTo(usual(day), 0.5);
    }
  });

  it('needs a year', () => {
    const one = days(1);
    expect(climatologicalOn(yearCourse(one, one.map(usual)), 205)).toBeCloseTo(usual(205), 6);
    expect(() => yearCourse(one.slice(1), one.slice(1).map(usual))).toThrow(/365 values, not 364/);
    expect(() => yearCourse(ten, new Array(ten.length).fill(NaN))).toThrow(/not 0/);
  });
});
