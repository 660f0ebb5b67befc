import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, findDate, type PlainDate } from '../../../src/basics/calendar.js';
import type { AirDay } from '../../../src/garden/store/store.js';
import { dayIndex, packAirYear, packedYears, unpackAirYear, yearOf } from '../../../src/storage/pack-air.js';

const date = (text: string): PlainDate => findDate(text)!;
const yearFrom = (first: string, n: number, valueAt: (i: number) => number | null): AirDay[] =>
  Array.from({ length: n }, (_, i) => ({
    date: addDays(date(first), i),
    min: valueAt(i),
    mean: null,
    max: valueAt(i + 1),
  }));
/** The days of all years, as they come back, out of bytes that begin anywhere, as drivers hand them out. */
const roundTrip = (days: readonly AirDay[], offset = 0): AirDay[] =>
  packedYears(days).flatMap(({ year, packed }) => {
    const within = new Uint8Array(packed.length + offset + 3);
    within.set(packed, offset);
    const view = Buffer.from(within.buffer, offset, packed.length);
    return unpackAirYear(year, view).filter((day) => day !== undefined);
  });

describe('a year of air, packed', () => {
  const values = fc.oneof(
    fc.constant(null),
    fc.integer({ min: -600, max: 600 }).map((tenths) => tenths / 10),
    fc.integer({ min: -40_000, max: 40_000 }).map((hundredths) => hundredths / 100),
    fc.double({ noNaN: true, noDefaultInfinity: true }),
  );
  const day = fc.record({
    date: fc.integer({ min: 0, max: 1500 }).map((n) => addDays(date('1999-06-01'), n)),
    min: values,
    mean: values,
    max: values,
  });

  test('comes back bit by bit, wherever a driver puts the bytes', () => {
    const year = fc.uniqueArray(day, { maxLength: 60, selector: (one) => one.date });
    fc.assert(
      fc.property(year, fc.integer({ min: 0, max: 9 }), (days, offset) => {
        const inOrder = days.toSorted((a, b) => (a.date < b.date ? -1 : 1));
        const back = roundTrip(days, offset).toSorted((a, b) => (a.date < b.date ? -1 : 1));
        expect(back).toEqual(inOrder);
        for (const [i, { min, max }] of back.entries()) {
          expect(Object.is(min, inOrder[i]!.min) && Object.is(max, inOrder[i]!.max)).toBe(true);
        }
      }),
    );
  });

  test('takes two bytes a value where all are tenths, or all hundredths, and eight where one is neither', () => {
    const bytesOf = (days: AirDay[]) => packAirYear(days).length;
    const [head, days] = [56, 366];
    expect(bytesOf(yearFrom('2027-01-01', 365, () => null))).toBe(head);
    expect(bytesOf(yearFrom('2027-01-01', 365, (i) => (i % 300) / 10))).toBe(head + 4 * days);
    expect(bytesOf(yearFrom('2027-01-01', 365, (i) => i / 100))).toBe(head + 4 * days);
    expect(bytesOf(yearFrom('2027-01-01', 365, (i) => (i === 9 ? 1 / 3 : 1)))).toBe(head + 16 * days);
    // Beyond what two bytes hold, and what a whole number cannot say.
    for (const odd of [3276.8, -3276.8, 1e12, -0, Number.MIN_VALUE]) {
      const odds = yearFrom('2027-01-01', 2, () => odd);
      expect(bytesOf(odds)).toBe(head + 16 * days);
      expect(Object.is(roundTrip(odds)[0]!.min, odd)).toBe(true);
    }
  });

  test('has the days of leap years and of others in their places', () => {
    for (const year of [1900, 2000, 2024, 2027, 2100]) {
      const days = yearFrom(`${year}-01-01`, 366, (i) => i).filter((one) => yearOf(one.date) === year);
      expect(days).toHaveLength(dayIndex(date(`${year}-12-31`)) + 1);
      expect(roundTrip(days)).toEqual(days);
    }
  });

  test('that is cut off, or of another format, is damage, and said so', () => {
    const packed = packAirYear(yearFrom('2027-01-01', 365, (i) => i / 10));
    for (const bad of [
      packed.subarray(0, -1),
      new Uint8Array(),
      packed.with(0, 2),
      packed.with(1, 9),
      packed.with(1, 0),
    ]) {
      expect(() => unpackAirYear(2027, bad)).toThrow('the air of 2027 is damaged');
    }
  });
});
