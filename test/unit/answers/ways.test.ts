import { describe, expect, it } from 'vitest';
import type { GradedRun } from '../../../src/answers/windows/grades.js';
import type { IndoorWay } from '../../../src/answers/windows/indoor-ways.js';
import { type DirectWay, insteadOf, waysOf } from '../../../src/answers/windows/ways.js';
import { addDays, type PlainDate } from '../../../src/basics/calendar.js';

const on = (date: string): PlainDate => `2027-${date}` as PlainDate;
const dates = (from: string, best: string, to: string) => ({ from: on(from), best: on(best), to: on(to) });

/** Picked from 1 July for so many days. */
const harvestOf = (days: number) => ({ from: on('07-01'), to: addDays(on('07-01'), days - 1) });
const direct = (grade: 'good' | 'fair', days: number): DirectWay => ({
  method: 'direct',
  grade,
  sow: dates('05-10', '05-17', '06-20'),
  harvest: harvestOf(days),
});
const indoors = (grade: 'good' | 'fair', days: number): IndoorWay => ({
  method: 'indoors',
  grade,
  roomC: 20,
  sow: dates('03-26', '04-02', '05-20'),
  hardenOff: { from: on('05-06'), to: on('05-13') },
  plantOut: dates('05-07', '05-14', '07-01'),
  harvest: harvestOf(days),
});
const methods = (ways: readonly { readonly method: string }[]): string[] => ways.map(({ method }) => method);

describe('the ways to grow a crop', () => {
  it('begin with the one of the better grade', () => {
    expect(methods(waysOf([direct('fair', 90)], [indoors('good', 40)]))).toEqual(['indoors', 'direct']);
    expect(methods(waysOf([direct('good', 40)], [indoors('fair', 90)]))).toEqual(['direct', 'indoors']);
    expect(methods(waysOf([], [indoors('fair', 40)]))).toEqual(['indoors']);
  });

  it('begin with trays where both are good and these give fourteen days of harvest more, not thirteen', () => {
    expect(methods(waysOf([direct('good', 50)], [indoors('good', 64)]))).toEqual(['indoors', 'direct']);
    expect(methods(waysOf([direct('good', 50)], [indoors('good', 63)]))).toEqual(['direct', 'indoors']);
  });
});

describe('what would make a date good', () => {
  const run = (grade: GradedRun['grade'], from: number, to: number): GradedRun => ({ grade, from, to });
  const actions = (runs: GradedRun[], ways: IndoorWay[]): string[] =>
    insteadOf(runs, ways, on('03-01')).map(({ action }) => action);

  it('is nothing where the first one is', () => {
    expect(actions([run('good', 0, 40)], [indoors('good', 60)])).toEqual([]);
  });

  it('is to wait for dates that are, and to start in trays', () => {
    const [wait, trays] = insteadOf([run('poor', 0, 60), run('good', 61, 100)], [indoors('good', 60)], on('03-01'));
    expect(wait).toMatchObject({ action: 'wait', grade: 'good', from: on('05-01') });
    expect(trays).toEqual({
      action: 'start-indoors',
      grade: 'good',
      from: on('03-26'),
      to: on('05-20'),
      text: {
        code: 'instead.start-indoors',
        params: {
          from: on('03-26'),
          to: on('05-20'),
          roomC: 20,
          plantOutFromDate: on('05-07'),
          plantOutToDate: on('07-01'),
        },
      },
    });
  });

  it('is trays before fair dates, and trays that are but fair are not named', () => {
    const fairOnly = [run('poor', 0, 60), run('fair', 61, 100)];
    expect(actions(fairOnly, [indoors('good', 60)])).toEqual(['start-indoors', 'wait']);
    expect(actions(fairOnly, [indoors('fair', 60)])).toEqual(['wait']);
    expect(actions([run('poor', 0, 100)], [indoors('good', 60)])).toEqual(['start-indoors']);
  });
});
