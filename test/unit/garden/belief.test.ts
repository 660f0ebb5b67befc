import { describe, expect, it } from 'vitest';
import { addDays, type PlainDate } from '../../../src/basics/calendar.js';
import { type Lesson, priorAfter, usualPrior } from '../../../src/garden/learning/prior.js';
import { cropCalled } from '../germination/make.js';

const usual = usualPrior(cropCalled('onion'));
const sown = '2027-04-10' as PlainDate;
const slow = { mean: usual.logTime.mean + 0.5, sd: 0.05 };
const lesson = (date: PlainDate, more: Partial<Lesson> = {}): Lesson => ({
  date,
  lot: null,
  logTime: slow,
  logitStand: null,
  ...more,
});
const supposed = (...lessons: Lesson[]) => priorAfter(usual, lessons, { date: sown, lot: 'a' }).logTime;

describe('what is supposed of a sowing', () => {
  it('is the crop’s published range where nothing was learned', () => {
    // Brewster (2008): onion takes up to 2.3 times as long in beds.
    expect(Math.exp(usual.logTime.mean)).toBeCloseTo(Math.sqrt(2.3), 6);
    expect(supposed()).toEqual(usual.logTime);
  });

  it('after one slow sowing is slower, and surer, but not as slow', () => {
    const one = supposed(lesson(addDays(sown, -30)));
    expect(one.mean).toBeGreaterThan(usual.logTime.mean + 0.25);
    expect(one.mean).toBeLessThan(slow.mean);
    expect(one.sd).toBeLessThan(usual.logTime.sd);
    const two = supposed(lesson(addDays(sown, -30)), lesson(addDays(sown, -45)));
    expect(two.mean).toBeGreaterThan(one.mean);
    expect(two.sd).toBeLessThan(one.sd);
  });

  it('forgets with the years, with the season and with the lot', () => {
    const [soon, halfYear, years] = [30, 182, 8 * 365].map((days) => supposed(lesson(addDays(sown, -days))).mean);
    expect(soon!).toBeGreaterThan(halfYear!);
    expect(halfYear!).toBeGreaterThan(years!);
    expect(years! - usual.logTime.mean).toBeLessThan(0.03);
    // A whole year back is the same season, and tells more than half a year back would without it.
    const fade = 2 ** (-183 / 730);
    const year = supposed(lesson(addDays(sown, -365))).mean - usual.logTime.mean;
    expect(year).toBeGreaterThan(fade * (halfYear! - usual.logTime.mean));
    expect(supposed(lesson(addDays(sown, -30), { lot: 'b' })).mean).toBeLessThan(
      supposed(lesson(addDays(sown, -30), { lot: 'a' })).mean,
    );
  });

  it('after one exact lesson is what two jointly normal numbers give, by hand', () => {
    // Two numbers of one spread v that go together by r: given one exactly, the other's mean is r of it, its spread v √(1 - r²).
    const exact = lesson(sown, { logTime: { mean: usual.logTime.mean + 1, sd: 1e-6 } });
    const { mean, sd } = supposed(exact);
    expect(mean - usual.logTime.mean).toBeCloseTo(0.7, 6);
    expect(sd / usual.logTime.sd).toBeCloseTo(Math.sqrt(1 - 0.49), 6);
  });
});
