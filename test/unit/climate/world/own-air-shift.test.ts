import { expect, test } from 'vitest';
import { daysBetween, type PlainDate } from '../../../../src/basics/calendar.js';
import { movedToOwnAir } from '../../../../src/climate/world/own-air-shift.js';

const MONTHS = { meanMaxC: new Float64Array(12).fill(20), meanMinC: new Float64Array(12).fill(10) };
/** Days that are 6 K warmer by day and 3 K by night than the table. */
function ownAir(from: string, to: string) {
  const n = daysBetween(from as PlainDate, to as PlainDate) + 1;
  return {
    firstDate: from as PlainDate,
    minC: new Float64Array(n).fill(13),
    maxC: new Float64Array(n).fill(26),
  };
}

test('one year moves the months half of the way, two years two thirds', () => {
  const one = movedToOwnAir(MONTHS, ownAir('2025-01-01', '2025-12-31'));
  expect([...one.meanMaxC]).toEqual(new Array(12).fill(23));
  expect([...one.meanMinC]).toEqual(new Array(12).fill(11.5));
  const two = movedToOwnAir(MONTHS, ownAir('2024-01-01', '2025-12-31'));
  expect([...two.meanMaxC]).toEqual(new Array(12).fill(24));
  expect([...two.meanMinC]).toEqual(new Array(12).fill(12));
});

test('a month of fewer than twenty days moves nothing', () => {
  const some = ownAir('2025-01-01', '2025-02-20');
  some.minC.fill(NaN, 19, 31);
  const { meanMaxC } = movedToOwnAir(MONTHS, some);
  expect([...meanMaxC.slice(0, 3)]).toEqual([20, 23, 20]);
  const fewer = ownAir('2025-02-01', '2025-02-19');
  expect(movedToOwnAir(MONTHS, fewer).meanMinC[1]).toBe(10);
});
