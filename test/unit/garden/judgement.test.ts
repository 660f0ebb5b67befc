import { describe, expect, it } from 'vitest';
import { addDays } from '../../../src/basics/calendar.js';
import type { Posterior } from '../../../src/garden/learning/count-posterior.js';
import { type Evidence, expectedOf, judgementOf, observedOf } from '../../../src/garden/sowing/judgement.js';
import type { Count } from '../../../src/garden/store/season-store.js';
import { cropCalled } from '../germination/make.js';
import { forecastOf, on } from './seasons.js';

const sown = on('2027-05-03');
const day = (n: number) => addDays(sown, n);
/** Beds of this crop give 40 to 90 % of a laboratory's stand, and take up to 1.2 times as long. */
const crop = { ...cropCalled('lettuce'), field: { from: 0.4, to: 0.9 }, bedTimeFactor: { from: 1, to: 1.2 } };

const count = (n: number, seedlings: number, more: Partial<Count> = {}): Count => ({
  date: day(n),
  seedlings,
  ofSeeds: null,
  thinned: false,
  ...more,
});

/** What counts leave open: dead with some odds; if it lives, late with some, and thin with none. */
const posterior = ({ dead = 0, late = 0 } = {}): Posterior => ({
  dead,
  logTime: Float64Array.of(0, Math.log(2)),
  logitStand: Float64Array.of(0, 1),
  odds: Float64Array.of((1 - late) / 2, (1 - late) / 2, late / 2, late / 2),
});

/** 200 seeds whose first are up after 6 days, half after 8 and most after 11. */
const evidence = (fields: Partial<Evidence> = {}): Evidence => ({
  crop,
  forecast: forecastOf(sown, undefined, { crop }),
  viablePercent: 100,
  posterior: posterior(),
  isOverdue: true,
  counts: [count(7, 20)],
  seeds: 200,
  today: day(7),
  ...fields,
});
const verdictOf = (fields: Partial<Evidence> = {}) => judgementOf(evidence(fields)).verdict;

describe('a row', () => {
  it('is given up at odds of nineteen to one that it is dead, and not before', () => {
    const none = { counts: [count(7, 0)] };
    expect(verdictOf({ ...none, posterior: posterior({ dead: 19 / 20 }) })).toBe('lost');
    expect(verdictOf({ ...none, posterior: posterior({ dead: 0.949 }) })).not.toBe('lost');
    // However sure of it the counts are, a slow bed may still show some.
    expect(verdictOf({ ...none, posterior: posterior({ dead: 0.999 }), isOverdue: false })).toBe('late');
  });

  it('is late where that is likelier than not', () => {
    expect(verdictOf({ posterior: posterior({ late: 0.51 }) })).toBe('late');
    expect(verdictOf({ posterior: posterior({ late: 0.49 }) })).toBe('wait');
  });

  it('is good with the least that beds give: 80 of 200 seeds at 40 %', () => {
    expect(observedOf(evidence({ counts: [count(7, 80)] }))).toBe('enough');
    expect(observedOf(evidence({ counts: [count(7, 79)] }))).toBe('some');
    expect(verdictOf({ counts: [count(7, 80)] })).toBe('good');
  });

  it('is due from the first day on which the first may be up', () => {
    const { forecast } = evidence();
    // The 6th day, give or take two.
    expect(expectedOf(forecast, day(3))).toBe('not-yet');
    expect(expectedOf(forecast, day(4))).toBe('due');
  });
});

describe('a count', () => {
  const ofHalf = (half: number, age: number) =>
    verdictOf({ forecast: forecastOf(sown, { first: 6, half, most: 90 }, { crop }), today: day(7 + age) });

  it('holds for a quarter of the days to half', () => {
    expect(ofHalf(24, 6)).toBe('wait');
    expect(ofHalf(24, 7)).toBe('count-now');
    expect(ofHalf(32, 8)).toBe('wait');
    expect(ofHalf(32, 9)).toBe('count-now');
  });

  it('holds for five days at least, so that nobody counts twice a week, and for ten at most', () => {
    expect(ofHalf(8, 5)).toBe('wait');
    expect(ofHalf(8, 6)).toBe('count-now');
    expect(ofHalf(60, 10)).toBe('wait');
    expect(ofHalf(60, 11)).toBe('count-now');
  });

  it('of less than half of what stood there says that something took them, from ten seedlings on', () => {
    const counted = (before: number, now: number) => verdictOf({ counts: [count(6, before), count(7, now)] });
    expect(counted(40, 19)).toBe('thin');
    expect(counted(40, 20)).toBe('wait');
    expect(counted(10, 4)).toBe('thin');
    expect(counted(9, 3)).toBe('wait');
    // Whoever thins takes them himself.
    expect(verdictOf({ counts: [count(6, 40), count(7, 19, { thinned: 21 })] })).toBe('wait');
  });
});
