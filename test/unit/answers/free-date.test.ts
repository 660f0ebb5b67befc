import { describe, expect, it } from 'vitest';
import { firstFreeDate } from '../../../src/answers/forecast/remedies/spell-answers.js';
import { placeDays } from '../../../src/answers/soil/place-days.js';
import { addDays, type PlainDate, zoneNamed } from '../../../src/basics/calendar.js';

const first = '2027-07-01' as PlainDate;
const DAYS = 12;

/** The first free date where some days have so many hours at 35 °C, of seed that is up within an hour. */
function freeDay(hotHours: Readonly<Record<number, number>>): PlainDate | undefined {
  const hourlyC = Float64Array.from({ length: 24 * DAYS }, (_, hour) =>
    hour % 24 < (hotHours[Math.floor(hour / 24)] ?? 0) ? 35 : 18,
  );
  const days = placeDays(Date.UTC(2027, 6, 1), hourlyC.length, first, DAYS, zoneNamed('UTC'));
  const later = { fromDay: 1, sowingH: 12, progressAt: () => 1, isHarmful: (tempC: number) => tempC > 30 };
  return firstFreeDate(days, hourlyC, later)?.date;
}

describe('the first date without harm', () => {
  it('passes over days with a quarter of their hours harmful, and not over those with fewer', () => {
    expect(freeDay({ 1: 6, 2: 6 })).toBe(addDays(first, 3));
    expect(freeDay({ 1: 5, 2: 5 })).toBe(addDays(first, 1));
  });

  it('leaves even the quickest seed two days after its own', () => {
    expect(freeDay({ 3: 8 })).toBe(addDays(first, 4));
    expect(freeDay({ 4: 8 })).toBe(addDays(first, 1));
  });
});
