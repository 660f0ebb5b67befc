import { describe, expect, test } from 'vitest';
import { frostDates } from '../../../src/climate/frost-dates.js';
import { frostShift, MAX_SHIFT_K } from '../../../src/climate/frost-shift.js';
import { typicalYears } from '../../../src/climate/world/typical-years.js';

const wave = (mean: number, amplitude: number): number[] =>
  Array.from({ length: 12 }, (_, month) => mean - amplitude * Math.cos((2 * Math.PI * (month + 0.5)) / 12));
/** Years of a temperate place, north or south. */
const years = (side: 1 | -1) =>
  typicalYears({ meanMaxC: wave(14, 11 * side), meanMinC: wave(5, 9 * side), sdK: wave(4, 0) }, 45 * side, 20, 2025);

describe.each([
  ['north', 1],
  ['south', -1],
] as const)('the shift of minima to a frost date, %s', (_, side) => {
  const made = years(side);
  const latitude = 45 * side;

  test.each([
    ['spring', -2.5],
    ['spring', 1.5],
    ['autumn', -1],
  ] as const)('finds again by how much they were moved: %s, %d K', (season, movedK) => {
    const moved = frostDates({ ...made, minC: made.minC.map((min) => min + movedK) }, 0, latitude);
    const found = frostShift(made, latitude, { side: season, around: moved[season].risk50! });
    // Dates are whole days, rounded twice; a day is up to 0.4 K.
    expect(Math.abs(found! - movedK)).toBeLessThan(0.45);
  });

  test('is none where eight degrees are not enough', () => {
    const summer = side === 1 ? '07-20' : '01-20';
    expect(frostShift(made, latitude, { side: 'spring', around: summer })).toBeNull();
    expect(frostShift(made, latitude, { side: 'autumn', around: side === 1 ? '07-28' : '01-28' })).toBeNull();
    // Before midwinter: warmer than eight degrees can make it.
    expect(frostShift(made, latitude, { side: 'spring', around: side === 1 ? '10-20' : '04-20' })).toBeNull();
    expect(MAX_SHIFT_K).toBe(8);
  });
});

test('29 February is a date like the others', () => {
  const mild = typicalYears({ meanMaxC: wave(17, 8), meanMinC: wave(8, 7), sdK: wave(3, 0) }, 45, 20, 2025);
  const leapDay = frostShift(mild, 45, { side: 'spring', around: '02-29' });
  expect(leapDay).toBe(frostShift(mild, 45, { side: 'spring', around: '02-28' }));
  expect(leapDay).not.toBeNull();
});
