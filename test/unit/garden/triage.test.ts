import { describe, expect, it } from 'vitest';
import { addDays, type PlainDate } from '../../../src/basics/calendar.js';
import type { Judgement } from '../../../src/garden/sowing/judgement.js';
import type { SeasonAhead } from '../../../src/garden/sowing/resowing.js';
import { type TriageEvidence, triageOf } from '../../../src/garden/sowing/triage.js';
import {
  isToSowAgain,
  lessDelay,
  lossesOn,
  sowAgainAbove,
  turningDate,
} from '../../../src/garden/sowing/triage-rule.js';
import { cropCalled } from '../germination/make.js';
import { sayPlainly } from '../words/say-plainly.js';
import { on } from './seasons.js';

const sown = on('2027-06-01');
const today = on('2027-06-20');
const day = (n: number): PlainDate => addDays(today, n);

/** Odds by date that are good up to some days from today, and then nothing. */
const upTo =
  (days: number, good = 0.8) =>
  (date: PlainDate) =>
    date <= day(days) ? good : 0;

const season = (days: number, good?: number): SeasonAhead => ({
  resowing: { from: on('2027-06-01'), by: day(days) },
  odds: upTo(days, good),
  harvestOf: (date) => ({ from: addDays(date, 50), to: addDays(date, 80), slowed: false }),
});

const judged = (lost: number, verdict: Judgement['verdict'] = 'late'): Judgement => ({
  verdict,
  odds: { late: 0.1, lost },
  text: { code: 'verdict.lost', params: { lostPercent: 100 * lost } },
});

const row = (changes: Partial<TriageEvidence> = {}) =>
  triageOf({
    crop: cropCalled('carrot'),
    sown,
    seeds: 200,
    today,
    expected: 'due',
    observed: 'none',
    judgement: judged(0.5),
    lostIfBare: [],
    moistTo: day(9),
    missing: 0.6,
    bareCounts: 1,
    season: season(60),
    harvest: { from: on('2027-08-10'), to: on('2027-09-01'), slowed: false },
    fitting: [],
    checkFor: [],
    ...changes,
  });

describe('the rule', () => {
  it('costs a twentieth of a harvest, where three in four new sowings come up', () => {
    expect(sowAgainAbove(0.1)).toBeCloseTo(0.05 / 0.15, 6);
    // A dead row, sown again in its window: a quarter is lost, and the cost.
    expect(lossesOn(1, () => 1, today).sowAgain).toBeCloseTo(0.25 + 0.05, 6);
    expect(lossesOn(0, () => 1, today)).toEqual({ sowAgain: 0.05, wait: 0 });
  });

  it('looks again after four days: a window that closes on the third day is met, one of the fourth not', () => {
    expect(lossesOn(1, upTo(4, 1), today).wait).toBeCloseTo(0.3, 6);
    expect(lossesOn(1, upTo(3, 1), today).wait).toBeCloseTo(1.05, 6);
  });

  it('takes 0.4 % of a harvest off for each day after the first sowing, so that mid-season the odds are 4 in 5', () => {
    const harvest = lessDelay(() => 1, sown);
    expect(harvest(addDays(sown, 25))).toBeCloseTo(0.9, 6);
    expect(harvest(addDays(sown, 400))).toBe(0);
    // dH = 0.75 x 0.016 = 0.012: 0.05 / 0.062 = 0.806.
    expect([0.8, 0.81].map((lost) => isToSowAgain(lost, harvest, today))).toEqual([false, true]);
  });

  it('and the losses of both choices agree, over odds and windows; equal ones wait', () => {
    for (const days of [-1, 0, 3, 4, 40]) {
      for (let lost = 0; lost <= 1; lost += 0.05) {
        const harvest = lessDelay(upTo(days), sown);
        const { sowAgain, wait } = lossesOn(lost, harvest, today);
        expect(isToSowAgain(lost, harvest, today)).toBe(sowAgain < wait - 1e-12);
      }
    }
    expect(isToSowAgain(1, () => 0.8, today)).toBe(false);
  });

  it('finds the first look on which it turns, as the row grows likelier lost, up to the last date', () => {
    const lostOn = (date: PlainDate): number => (date >= day(8) ? 0.9 : 0.5);
    const harvest = lessDelay(() => 0.8, sown);
    expect(turningDate(lostOn, harvest, today, day(40))).toBe(day(8));
    expect(turningDate(lostOn, harvest, today, day(7))).toBeNull();
  });
});

describe('a row', () => {
  it('that is not due is left alone, unless it is found thin', () => {
    expect(row({ expected: 'not-yet', judgement: judged(0.07, 'wait') })).toBeNull();
    expect(row({ expected: 'not-yet', judgement: judged(0.07, 'thin') })!.do).toBe('fill-gaps');
  });

  it('is not judged without a count', () => {
    expect(row({ judgement: { ...judged(0), odds: null, verdict: 'count-now' } })).toMatchObject({ do: 'count' });
  });

  it('at the same odds waits in mid-season, and is sown again before the window closes', () => {
    expect(row()!.do).toBe('wait');
    const last = row({ season: season(3) })!;
    expect(last).toMatchObject({ do: 'sow-again', text: { params: { sureness: 'perhaps', from: null, by: day(3) } } });
    expect(last.options.map(({ action }) => action)).toEqual(['sow-again', 'wait']);
  });

  it('is probably lost from 3 in 5 on, in numbers that can be pictured', () => {
    const paramsAt = (lost: number) => row({ judgement: judged(lost), season: season(3) })!.text.params;
    expect(paramsAt(0.59)).toMatchObject({ sureness: 'perhaps', lostRows: 2, ofRows: 3 });
    expect(paramsAt(0.61)).toMatchObject({ sureness: 'probably', lostRows: 2, ofRows: 3 });
    expect(paramsAt(0.74)).toMatchObject({ lostRows: 3, ofRows: 4 });
    expect(paramsAt(0.97)).toMatchObject({ lostRows: 19, ofRows: 20 });
    expect(row({ judgement: judged(0.02) })!.text.params).toMatchObject({ livingRows: 19, ofRows: 20 });
  });

  it('loses days of harvest in proportion to how long its crop is picked', () => {
    const [first, second] = row({ season: season(3) })!.options;
    const days = cropCalled('carrot').pickingDays!;
    const harvest = 0.8 - 0.004 * 19;
    expect(first!.costs.daysLost).toBeCloseTo(days * (0.5 * (1 - 0.75 * harvest) + 0.05), 6);
    expect(second!.costs.daysLost).toBeCloseTo(days * 0.5 * 1.05, 6);
    expect(first!.odds.stands).toBeCloseTo(0.5 + 0.5 * 0.75, 6);
    expect(first!.harvest).toEqual({ from: day(50), to: day(80) });
  });

  it('that is lost is sown again as soon as there is a good date, also where that is to come', () => {
    const later = { ...season(60), resowing: { from: day(10), by: day(60) } };
    expect(row({ judgement: judged(0.99, 'lost'), season: later })).toMatchObject({
      do: 'sow-again',
      text: { params: { sureness: 'lost', from: day(10), by: day(60) } },
    });
    expect(row({ judgement: judged(0.9), season: later })!.do).toBe('wait');
  });

  it('is kept moist only until a day that is to come', () => {
    expect(row()!.text.params).toMatchObject({ moistUntilDate: day(9) });
    expect(row({ moistTo: today })!.text.params).toMatchObject({ moistUntilDate: null });
  });

  it('that lives is not given up where the season is over, and one that is lost is', () => {
    const over = { ...season(0), resowing: 'too-late' } as const;
    expect(row({ season: over })).toMatchObject({ do: 'wait', options: [{ action: 'wait' }] });
    const fitting = [cropCalled('radish'), cropCalled('spinach')];
    expect(row({ season: over, judgement: judged(0.99, 'lost'), fitting })).toMatchObject({
      do: 'nothing',
      text: { params: { why: 'too-late', hasFitting: 'yes', fitting: 'radish\nspinach' } },
    });
    expect(row({ season: over, judgement: judged(0.02, 'thin') })).toMatchObject({
      do: 'nothing',
      text: { params: { hasFitting: 'no' } },
    });
  });

  it('that is thin costs the seed and the days of its gaps', () => {
    const [option] = row({ judgement: judged(0.01, 'thin') })!.options;
    const days = cropCalled('carrot').pickingDays!;
    expect(option!.costs.seeds).toBe(120);
    expect(option!.costs.daysLost).toBeCloseTo(days * 0.6 * (1 - 0.75 * (0.8 - 0.004 * 19)), 6);
  });
});

describe('what is said of waiting', () => {
  const textOf = (changes: Partial<TriageEvidence>) => row(changes)!.text;

  it('tells that both ways lose alike, where they do', () => {
    // In the middle of a long season four days cost little; the cost of the seed is a twentieth of a harvest.
    const alike = row({ judgement: judged(0.78), season: season(60) })!;
    const [first, second] = alike.options.map(({ costs }) => costs.daysLost!);
    expect(Math.abs(first! - second!)).toBeLessThan(0.5);
    expect(alike.do).toBe('wait');
    expect(sayPlainly(alike.text)).toContain('about as many days of harvest');
    const apart = row({ judgement: judged(0.1), season: season(60) })!;
    expect(sayPlainly(apart.text)).not.toContain('about as many days of harvest');
  });

  it('tells that a single bare count can miss what is about to show', () => {
    expect(sayPlainly(textOf({ judgement: judged(0.7), bareCounts: 1 }))).toContain('can miss');
    expect(sayPlainly(textOf({ judgement: judged(0.7), bareCounts: 2 }))).not.toContain('can miss');
  });
});
