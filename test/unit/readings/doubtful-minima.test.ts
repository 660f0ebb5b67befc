import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frostDatesOfPlace } from '../../../src/answers/windows/frost-dates.js';
import { addDays, type PlainDate } from '../../../src/basics/calendar.js';
import { doubtfulMinima, isDoubtfulMinimum } from '../../../src/readings/checks/doubtful-minima.js';

const FIRST = '2001-01-01' as PlainDate;

/** Twelve years whose nights swing from -6 °C in January to 16 °C in July, each a little unlike the next. */
const years = Array.from({ length: 12 * 365 }, (_, day) => {
  const min =
    5 - 11 * Math.cos((2 * Math.PI * (day - 15)) / 365.25) + 2.5 * Math.sin(day / 3.1) + 1.5 * Math.sin(day / 41);
  return { date: addDays(FIRST, day), min, max: min + 10 };
});

describe('a minimum that falls far below the nights beside it', () => {
  it('is doubtful where it falls by more than 12 K from both, and the maximum stays', () => {
    expect(isDoubtfulMinimum([14, 1.9, 14], [25, 24, 25])).toBe(true);
    expect(isDoubtfulMinimum([14, 2.1, 14], [25, 24, 25])).toBe(false);
    expect(isDoubtfulMinimum([14, 1.9, 13.8], [25, 24, 25])).toBe(false);
    // A front brings a colder afternoon with it.
    expect(isDoubtfulMinimum([14, 1, 14], [25, 19, 25])).toBe(true);
    expect(isDoubtfulMinimum([14, 1, 14], [25, 18.9, 25])).toBe(false);
    expect(isDoubtfulMinimum([14, 0, Number.NaN], [25, 24, 25])).toBe(false);
  });

  it('is not looked for across a missing day', () => {
    const day = (date: string, min: number) => ({
      date: date as PlainDate,
      min,
      max: 25,
    });
    const days = [day('2004-09-29', 14), day('2004-09-30', 0), day('2004-10-01', 14)];
    expect(doubtfulMinima(days).map(({ date }) => date)).toEqual(['2004-09-30']);
    expect(doubtfulMinima([days[0]!, days[1]!, day('2004-10-02', 14)])).toEqual([]);
  });

  it('moves no frost date, whichever mild night it falls on', () => {
    const right = frostDatesOfPlace(years, 0, 44);
    const mild = years.flatMap(({ min }, day) => (day > 0 && day < years.length - 1 && min > 12.5 ? [day] : []));
    fc.assert(
      fc.property(fc.constantFrom(...mild), fc.double({ min: -8, max: 0, noNaN: true }), (day, wrongC) => {
        const wrong = frostDatesOfPlace(
          years.map((one, i) => (i === day ? { ...one, min: Math.min(wrongC, one.min - 15) } : one)),
          0,
          44,
        );
        expect(wrong.lastSpringFrost).toEqual(right.lastSpringFrost);
        expect(wrong.firstAutumnFrost).toEqual(right.firstAutumnFrost);
        expect(wrong.warnings.map(({ code }) => code)).toEqual(['doubtful-minimum']);
      }),
      { numRuns: 40 },
    );
  });
});
