import { describe, expect, it } from 'vitest';
import { bestOf } from '../../../src/answers/windows/best-date.js';
import type { DateInYears } from '../../../src/answers/windows/dates-in-years.js';
import { type Grade, gradeOfShares, gradeRuns, gradesOf, windowRuns } from '../../../src/answers/windows/grades.js';
import type { JudgedDates } from '../../../src/answers/windows/judged-dates.js';
import { reasonsOf } from '../../../src/answers/windows/reasons.js';
import type { WhyNot } from '../../../src/answers/windows/why-nots.js';
import { windowWarnings } from '../../../src/answers/windows/window-notes.js';
import type { PlainDate } from '../../../src/basics/calendar.js';
import { cropCalled } from '../germination/make.js';

const criteria = { share: 0.5, shareIfHeld: 0.5, maxDays: 20, sureness: 0.8 };
const from = '2027-03-01' as PlainDate;
const dates = (n: number, of: (day: number) => Partial<DateInYears>): DateInYears[] =>
  Array.from({ length: n }, (_, day) => of(day) as DateInYears);

describe('the grade of a date', () => {
  it('is fair where it was fair in half of the years', () => {
    expect(gradeOfShares(0, 0.5, criteria)).toBe('fair');
    expect(gradeOfShares(0, 0.49, criteria)).toBe('poor');
  });

  it('is worth three years of five where it was fair in all, and never good', () => {
    const { odds, runs } = gradesOf(
      dates(30, () => ({ good: 0, fair: 1, thin: 0 })),
      criteria,
    );
    expect(odds[15]).toBeCloseTo(3 / 5, 9);
    expect(runs).toEqual([{ from: 0, to: 29, grade: 'fair' }]);
  });

  type Stretch = readonly [Grade, number];
  /** Dates of the grades named, so many on end. */
  const row = (runs: readonly Stretch[]): Grade[] =>
    runs.flatMap(([grade, days]) => new Array<Grade>(days).fill(grade));
  const gradesIn = (...runs: readonly Stretch[]) => gradeRuns(row(runs)).map(({ grade }) => grade);

  it('changes for a week, and not for six days', () => {
    expect(gradesIn(['good', 20], ['fair', 7], ['good', 20])).toEqual(['good', 'fair', 'good']);
    expect(gradesIn(['good', 20], ['fair', 6], ['good', 20])).toEqual(['good']);
  });

  const windowsIn = (...runs: readonly Stretch[]) =>
    windowRuns(gradeRuns(row(runs))).map(({ from: first, to }) => [first, to]);

  it('joins two good windows across a fair fortnight', () => {
    expect(windowsIn(['good', 20], ['fair', 14], ['good', 20])).toEqual([[0, 53]]);
    expect(windowsIn(['good', 20], ['fair', 15], ['good', 20])).toEqual([
      [0, 19],
      [35, 54],
    ]);
  });

  it('makes a window of a fair fortnight without a good date beside it', () => {
    expect(windowsIn(['poor', 20], ['fair', 14], ['poor', 20])).toEqual([[20, 33]]);
    expect(windowsIn(['poor', 20], ['fair', 13], ['poor', 20])).toEqual([]);
  });
});

describe('the reasons of dates', () => {
  const codesOf = (causes: readonly (readonly [WhyNot, number])[]) =>
    reasonsOf(
      dates(1, () => ({ known: 100, causes: new Map(causes) })),
      { from: 0, to: 0 },
      { crop: cropCalled('beet'), criteria, from, years: 20, soilC: new Float64Array(1).fill(10) },
      'date',
    ).map(({ code }) => code);

  it('are three at most', () => {
    const all = ['too-slow', 'ground-wet', 'over-winter', 'too-hot'] as const;
    expect(codesOf(all.map((code) => [code, 10] as const))).toHaveLength(3);
  });

  it('leave out what spoilt fewer than two years for five of the first reason', () => {
    expect(
      codesOf([
        ['too-slow', 50],
        ['ground-wet', 20],
      ]),
    ).toEqual(['too-slow', 'ground-wet']);
    expect(
      codesOf([
        ['too-slow', 50],
        ['ground-wet', 19],
      ]),
    ).toEqual(['too-slow']);
  });
});

describe('the earliest date', () => {
  const N = 60;
  /** The day chosen, where heat takes a share of the stand on each day. */
  const dayChosen = (lost: (day: number) => number): number => {
    const all = dates(N, (day) => ({
      stand: Float64Array.of(100),
      ifHeldAreLost: Float64Array.of(100 * (1 - lost(day))),
      halfDays: Float64Array.of(10),
    }));
    const graded = {
      sureness: new Float64Array(N).fill(1),
      odds: new Float64Array(N).fill(1),
      runs: [{ from: 0, to: N - 1, grade: 'good' }],
    };
    const judged = { all, graded, years: [2027], reasonsIn: () => [] } as unknown as JudgedDates;
    const { date } = bestOf({ from, prefer: 'earliest', criteria }, judged)!;
    return (Date.parse(date) - Date.parse(from)) / 86_400_000;
  };

  it('is put off a week for heat that takes more than a tenth of the stand', () => {
    expect(dayChosen((day) => (day === 0 ? 0.105 : 0))).toBe(7);
    expect(dayChosen((day) => (day === 0 ? 0.095 : 0))).toBe(0);
  });

  it('is put off by three weeks at most, and for half of the loss', () => {
    const lostUntil = (safe: number, later = 0) => dayChosen((day) => (day < safe ? 0.5 : later));
    expect(lostUntil(21)).toBe(21);
    expect(lostUntil(22)).toBe(0);
    expect(lostUntil(10, 0.25)).toBe(10);
    expect(lostUntil(10, 0.26)).toBe(0);
  });
});

describe('past years', () => {
  it('are few below five', () => {
    const codesOf = (years: number) =>
      windowWarnings({ crop: cropCalled('beet') } as Parameters<typeof windowWarnings>[0], years, true, true).map(
        ({ code }) => code,
      );
    expect(codesOf(4)).toEqual(['thin-years']);
    expect(codesOf(5)).toEqual([]);
  });
});
