import { describe, expect, it } from 'vitest';
import { probit } from '../../../src/basics/numerics/probit.js';
import { SPREADS } from '../../../src/garden/learning/count-posterior.js';
import { learnedOf } from '../../../src/garden/learning/learned.js';
import { isOverdue } from '../../../src/garden/learning/overdue.js';
import { type Normal, usualPrior } from '../../../src/garden/learning/prior.js';
import { COHORTS } from '../../../src/germination/run/cohorts.js';
import { cropCalled } from '../germination/make.js';

const crop = cropCalled('onion');
const usual = usualPrior(crop);
/** What one other sowing of the bed has taught of the time. */
const learned = (logTime: Normal) =>
  learnedOf({ crop, counts: [], usual, belief: { ...usual, logTime }, posterior: null, lessons: 1 })!;

describe('what was learned of the time', () => {
  const { mean, sd } = usual.logTime;

  it('is told where a tenth of the doubt is gone', () => {
    expect(learned({ mean, sd: 0.899 * sd }).timeFactor).not.toBeNull();
    expect(learned({ mean, sd: 0.901 * sd }).timeFactor).toBeNull();
  });

  it('is told where its middle has moved by half of the doubt', () => {
    expect(learned({ mean: mean + 0.51 * sd, sd }).timeFactor).not.toBeNull();
    expect(learned({ mean: mean + 0.49 * sd, sd }).timeFactor).toBeNull();
  });

  it('reaches from the tenth to the ninetieth of a hundred such rows', () => {
    const { middle, from, to } = learned({ mean, sd: sd / 2 }).timeFactor!;
    expect(middle).toBeCloseTo(Math.exp(mean), 9);
    expect(Math.log(from)).toBeCloseTo(mean + probit(0.1) * (sd / 2), 4);
    expect(Math.log(to)).toBeCloseTo(mean + probit(0.9) * (sd / 2), 4);
  });
});

describe('a sowing that is overdue', () => {
  /** So many of its hundred cohorts would be up in a slow bed, all of them in a quick one. */
  const reach = (inSlowBed: number): Float64Array =>
    Float64Array.from({ length: COHORTS }, (_, cohort) => (cohort < inSlowBed ? 5 : 0.5));
  const counts = [{ seedlings: 0, ofSeeds: 100, isAtLeast: false }];
  const overdueWith = (inSlowBed: number): boolean =>
    isOverdue({ reaches: SPREADS.map(() => reach(inSlowBed)), counts, viable: 1 }, crop);

  it('has had the time in which three of four would be up in a slow bed', () => {
    expect(overdueWith(75)).toBe(true);
    expect(overdueWith(74)).toBe(false);
  });
});
