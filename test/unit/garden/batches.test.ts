import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BatchStart, batchesFor, type DaySpan } from '../../../src/garden/plan/batches.js';

/** A start that is up after some days, grows for 50, and is picked for 14, the same in every year. */
function startOn(day: number, delayDays: number, isOpen = true): BatchStart & { readonly up: number } {
  const up = day + delayDays;
  const [fromDay, toDay] = [up + 50, up + 63];
  return {
    day,
    up,
    isOpen,
    ripeDay: (fromDay + toDay) / 2,
    reach: (week) => Number(isOpen && fromDay <= week.toDay && toDay >= week.fromDay),
  };
}

/** One a day, up after 24 days at first, in warming soil after fewer and fewer, down to 4. */
const warming = Array.from({ length: 200 }, (_, day) => startOn(day, Math.max(4, Math.round(24 - day / 4))));
const weeksFrom = (fromDay: number, n: number): DaySpan[] =>
  Array.from({ length: n }, (_, i) => ({ fromDay: fromDay + 7 * i, toDay: fromDay + 7 * i + 6 }));

const steps = (values: readonly number[]): number[] => values.slice(1).map((value, i) => value - values[i]!);

describe('batchesFor', () => {
  it('spaces emergence evenly, and sowings further apart where the soil warms', () => {
    const { batches, unreached } = batchesFor(weeksFrom(80, 12), 2, [warming]);
    expect(unreached).toEqual([]);
    expect(batches.map(({ weeks }) => weeks)).toEqual([
      [0, 1],
      [2, 3],
      [4, 5],
      [6, 7],
      [8, 9],
      [10, 11],
    ]);
    for (const step of steps(batches.map(({ start }) => start.up))) expect(Math.abs(step - 14)).toBeLessThanOrEqual(1);
    // By hand: sown on day 8 it takes 22 days, on day 26 18; on day 27 17, which is up no later.
    expect(batches.slice(0, 2).map(({ start }) => [start.day, start.up])).toEqual([
      [8, 30],
      [26, 44],
    ]);
  });

  it('leaves a gap where the bed is shut, with the nearest sowings to either side', () => {
    const shut = warming.map(({ day }) => startOn(day, 4, day < 60 || day > 110));
    const { batches, unreached } = batchesFor(weeksFrom(110, 12), 1, [shut]);
    // Sown on day 59 it is picked on days 113 to 126; on day 111 from 165 on.
    expect(batches.filter(({ start }) => start.day === 59).flatMap(({ weeks }) => weeks)).toEqual([1, 2]);
    expect(unreached).toEqual([3, 4, 5, 6]);
    expect(batches.find(({ weeks }) => weeks.includes(7))!.start.day).toBe(111);
    expect(batches.every(({ start }) => start.isOpen)).toBe(true);
  });

  it('counts on what is made for the weeks it is nearest to, though another start were nearer still', () => {
    const [weeks, soon] = [weeksFrom(80, 2), startOn(5, 23)];
    const planned = batchesFor(weeks, 2, [warming]).batches[0]!.start;
    expect(batchesFor(weeks, 2, [warming], [soon]).batches.map(({ start }) => start)).toEqual([soon]);
    // Ripe half a batch sooner than wanted, and more, it is no harvest of these weeks.
    const early = startOn(0, 20);
    expect(batchesFor(weeks, 2, [warming], [early]).batches.map(({ start }) => start)).toEqual([planned]);
    const shut = { ...soon, isOpen: false };
    expect(batchesFor(weeks, 2, [warming], [shut]).batches.map(({ start }) => start)).toEqual([planned]);
  });

  it('looks at the next kind of start only where the first reaches nothing', () => {
    const shut = warming.map(({ day }) => startOn(day, 4, day < 60));
    const trays = warming.map(({ day }) => startOn(day, 6));
    const { batches, unreached } = batchesFor(weeksFrom(100, 8), 2, [shut, trays]);
    expect(unreached).toEqual([]);
    expect(batches.map(({ start }) => shut.includes(start as (typeof shut)[number]))).toEqual([
      true,
      true,
      false,
      false,
    ]);
  });

  it('counts a week as reached where it was in half of the years, and tells how many', () => {
    const seldom = warming.map((start) => ({ ...start, reach: (week: DaySpan) => 0.4 * start.reach(week) }));
    const often = warming.map((start) => ({ ...start, reach: (week: DaySpan) => 0.7 * start.reach(week) }));
    expect(batchesFor(weeksFrom(80, 2), 2, [seldom])).toEqual({ batches: [], unreached: [0, 1] });
    expect(batchesFor(weeksFrom(80, 2), 2, [often]).batches[0]!.sureness).toBe(0.7);
  });

  it('never sows earlier for a harvest that is wanted some weeks later', () => {
    const delays = fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 150, maxLength: 150 });
    const openness = fc.array(fc.boolean(), { minLength: 150, maxLength: 150 });
    fc.assert(
      fc.property(
        delays,
        openness,
        fc.integer({ min: 40, max: 150 }),
        fc.integer({ min: 1, max: 6 }),
        (waits, open, from, later) => {
          let up = 0;
          const starts = waits.map((wait, day) => {
            up = Math.max(up + wait, day + 3);
            return startOn(day, up - day, open[day]!);
          });
          const [first, second] = [from, from + 7 * later].map(
            (day) => batchesFor(weeksFrom(day, 6), 2, [starts]).batches,
          );
          const sown = (batches: typeof first): number | undefined => batches![0]?.start.day;
          if (sown(first) !== undefined && sown(second) !== undefined) {
            expect(sown(second)!).toBeGreaterThanOrEqual(sown(first)!);
          }
          expect(steps(first!.map(({ start }) => start.day)).every((step) => step > 0)).toBe(true);
        },
      ),
    );
  });
});
