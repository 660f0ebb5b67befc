import { describe, expect, it } from 'vitest';
import { addDays } from '../../../src/basics/calendar.js';
import type { Verdict } from '../../../src/garden/sowing/judgement.js';
import type { KnownSowing } from '../../../src/garden/sowing/known-sowing.js';
import type { SowingState } from '../../../src/garden/sowing/sowing-state.js';
import { whatToDo } from '../../../src/garden/sowing/what-to-do.js';
import { cropCalled } from '../germination/make.js';
import { forecastOf, on, sowingOf } from './seasons.js';

const sown = on('2027-05-03');
const day = (n: number) => addDays(sown, n);

/** What is to be done some days after a sowing of which most were due on the 11th. */
const todo = (n: number, verdict: Verdict, resowing: SowingState['resowing'] = null) =>
  whatToDo(
    { sowing: sowingOf(), counts: [], crop: cropCalled('lettuce'), today: day(n) } as unknown as KnownSowing,
    {
      growing: { forecast: forecastOf(sown), learned: null, posterior: null, isOverdue: true },
      judgement: { verdict, odds: null },
      indoors: null,
      harvest: null,
      resowing,
    } as unknown as SowingState,
  );

describe('what there is to do', () => {
  it('looks a fortnight ahead', () => {
    expect(todo(30, 'lost')).toMatchObject([{ task: 'sow-again', from: day(30), to: day(44) }]);
    const from = (n: number) => todo(30, 'lost', { from: day(30 + n), by: day(60) });
    expect(from(14)).toHaveLength(1);
    expect(from(15)).toHaveLength(0);
  });

  it('asks for a count up to two months after most were due, when nobody could tell seedlings from weeds any more', () => {
    expect(todo(11 + 60, 'count-now').map(({ task }) => task)).toEqual(['count']);
    expect(todo(11 + 61, 'count-now')).toEqual([]);
  });

  it('looks again twice a week at a row that waits', () => {
    // From one Monday to the next but one a row is seen four times at most.
    expect(todo(20, 'late')).toMatchObject([{ task: 'count', from: day(24), to: day(24) }]);
  });
});
