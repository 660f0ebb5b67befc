import { describe, expect, it } from 'vitest';
import { addDays } from '../../../src/basics/calendar.js';
import type { PlanSowing } from '../../../src/garden/plan/plan.js';
import { sowingsToMake } from '../../../src/garden/plan/sowings-to-make.js';
import { planOf } from './seasons.js';

// Harvest from 1 July on; a sowing lasts two weeks.
const { plan } = planOf();
const FIRST = plan.harvest.from;

/** A planned sowing that is picked for two weeks from some day of the harvest on. */
const plannedFor = (fromDay: number, sown = false): PlanSowing => {
  const from = addDays(FIRST, fromDay);
  return {
    date: addDays(from, -75),
    method: 'direct',
    grade: 'good',
    instead: null,
    shaded: false,
    seeds: 40,
    plants: 12,
    half: { date: addDays(from, -67), range: null },
    harvest: { from, to: addDays(from, 13), slowed: false },
    sureness: 0.9,
    indoors: null,
    sown,
    advice: [],
  };
};
const turns = (fromDays: readonly number[], sown: readonly number[] = []): number[] =>
  sowingsToMake(plan, {
    sowings: fromDays.map((day) => plannedFor(day, sown.includes(day))),
    weeksPerSowing: 2,
  }).map(({ turn }) => turn);

describe('the sowings of a plan that are still to be made', () => {
  it('are numbered by the part of the harvest that they are for', () => {
    expect(turns([0, 14, 28])).toEqual([0, 1, 2]);
  });

  it('keep their numbers while their dates move, and when those before them are past', () => {
    for (const shift of [-6, -3, 3, 6]) expect(turns([0, 14, 28].map((day) => day + shift))).toEqual([0, 1, 2]);
    expect(turns([14, 28])).toEqual([1, 2]);
  });

  it('have each a number of its own, be they ever so close', () => {
    expect(turns([0, 2, 4, 40])).toEqual([0, 1, 2, 3]);
    expect(turns([-40, 0])).toEqual([0, 1]);
  });

  it('are not those that were sown, whose numbers stay theirs', () => {
    expect(turns([0, 14, 28], [14])).toEqual([0, 2]);
    expect(turns([0, 2, 28], [0])).toEqual([1, 2]);
  });

  it('are told as the calendar needs them', () => {
    const [one] = sowingsToMake(plan, { sowings: [plannedFor(0)], weeksPerSowing: null });
    expect(one).toEqual({
      turn: 0,
      date: '2027-04-17',
      seeds: 40,
      method: 'direct',
      half: { date: '2027-04-25', range: null },
      harvest: { from: '2027-07-01', to: '2027-07-14', slowed: false },
      indoors: null,
    });
  });
});
