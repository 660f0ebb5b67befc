import { describe, expect, it } from 'vitest';
import { addDays, type PlainDate } from '../../../src/basics/calendar.js';
import { logit } from '../../../src/basics/numerics/logit.js';
import { logOddsOfShares } from '../../../src/garden/learning/count-odds.js';
import { countPosterior, SPREADS } from '../../../src/garden/learning/count-posterior.js';
import { likelihoodAsGaussian } from '../../../src/garden/learning/likelihood-as-gaussian.js';
import { oddsOfTimes } from '../../../src/garden/learning/posterior-factors.js';
import { priorAfter, usualPrior } from '../../../src/garden/learning/prior.js';
import { COHORTS } from '../../../src/germination/run/cohorts.js';
import { cropCalled } from '../germination/make.js';

const count = (seedlings: number, ofSeeds: number) => ({ seedlings, ofSeeds, isAtLeast: false });
/** How likely a count is of seed of which all, or a quarter, is up; shares are tabled by 240 steps of their roots. */
const ofAll = (seedlings: number, ofSeeds: number): number =>
  Math.exp(logOddsOfShares(count(seedlings, ofSeeds), 1)[240]!);
const ofQuarter = (seedlings: number, ofSeeds: number): number =>
  Math.exp(logOddsOfShares(count(seedlings, ofSeeds), 1)[120]!);

describe('how likely a count is', () => {
  it('is one wild count in twenty, of which half are of nobody who looked, and half of any number', () => {
    expect(ofAll(0, 100)).toBeCloseTo(0.05 * (0.5 + 0.5 / 101), 6);
    expect(ofAll(50, 100)).toBeCloseTo((0.05 * 0.5) / 101, 6);
  });

  it('scatters as a beta-binomial sample of concentration 1000', () => {
    // Variance n p (1 - p) (c + n)/(c + 1).
    let [mean, square] = [0, 0];
    for (let k = 0; k <= 200; k++) {
      const sampled = (ofQuarter(k, 200) - 0.025 / 201 - (k === 0 ? 0.025 : 0)) / 0.95;
      mean += sampled * k;
      square += sampled * k * k;
    }
    expect(mean).toBeCloseTo(50, 6);
    expect(square - mean * mean).toBeCloseTo((200 * 0.25 * 0.75 * 1200) / 1001, 4);
  });

  it('of more seeds than the concentration says no more than of as many, and of fewer less', () => {
    expect(logOddsOfShares(count(2000, 4000), 1)).toEqual(logOddsOfShares(count(500, 1000), 1));
    expect(logOddsOfShares(count(500, 1000), 1)).not.toEqual(logOddsOfShares(count(450, 900), 1));
  });
});

describe('what is supposed before any count', () => {
  it('is one sowing in twenty of a kind two and a half times as wide', () => {
    const never = { counts: [count(0, 100)], reaches: SPREADS.map(() => new Float64Array(COHORTS)), viable: 1 };
    const odds = oddsOfTimes(countPosterior(usualPrior(cropCalled('onion')), never));
    // The grid reaches 4.5 standard deviations to either side, in 61 points.
    const density = (z: number): number =>
      0.95 * Math.exp(-(z ** 2) / 2) + (0.05 / 2.5) * Math.exp(-((z / 2.5) ** 2) / 2);
    expect(odds[0]! / odds[30]!).toBeCloseTo(density(4.5) / density(0), 9);
    expect(odds[10]! / odds[30]!).toBeCloseTo(density(3) / density(0), 9);
  });

  it('of time and stand is the published range as 1.6 standard deviations to either side', () => {
    const { logTime, logitStand } = usualPrior({ bedTimeFactor: { from: 1, to: 2.3 }, field: { from: 0.2, to: 0.9 } });
    expect(logTime.sd).toBeCloseTo(Math.log(2.3) / 3.2, 9);
    expect(logitStand.sd).toBeCloseTo((logit(0.9) - logit(0.2)) / 3.2, 9);
  });

  it('is never quite sure: beds differ by a tenth of time, by 0.3 of the logit, and no share is all or nothing', () => {
    const sure = usualPrior({ bedTimeFactor: { from: 1, to: 1 }, field: { from: 0.8, to: 0.8 } });
    expect(sure.logTime).toEqual({ mean: 0, sd: 0.1 });
    expect(sure.logitStand.sd).toBe(0.3);
    const open = usualPrior({ bedTimeFactor: { from: 1, to: 1 }, field: { from: 0, to: 1 } });
    expect(open.logitStand.sd).toBeCloseTo(logit(0.97) / 1.6, 9);
  });
});

describe('what an exact lesson leaves', () => {
  const usual = usualPrior(cropCalled('onion'));
  const sown = '2027-04-10' as PlainDate;
  const sharedAfter = (days: number, lot: string): number => {
    const logTime = { mean: usual.logTime.mean + 1, sd: 1e-6 };
    const lesson = { date: addDays(sown, -days), lot, logTime, logitStand: null };
    return priorAfter(usual, [lesson], { date: sown, lot: 'a' }).logTime.mean - usual.logTime.mean;
  };

  it('is by hand 0.7 at once, half of that after two years, and four fifths of it for another lot', () => {
    expect(sharedAfter(0, 'a')).toBeCloseTo(0.7, 6);
    expect(sharedAfter(730, 'a')).toBeCloseTo(0.35, 4);
    expect(sharedAfter(0, 'b')).toBeCloseTo(0.56, 6);
  });

  it('is six tenths of it where the seasons are opposite', () => {
    expect(sharedAfter(183, 'a')).toBeCloseTo(0.7 * 2 ** (-183 / 730) * 0.6, 3);
  });
});

describe('what counts say alone', () => {
  const before = { mean: 0, sd: 1 };
  /** A normal distribution of a variance on a fine grid. */
  const said = (variance: number) => {
    const points = Float64Array.from({ length: 2001 }, (_, i) => (i - 1000) / 200);
    const heights = points.map((x) => Math.exp(-(x * x) / (2 * variance)));
    const whole = heights.reduce((sum, height) => sum + height, 0);
    return likelihoodAsGaussian(
      before,
      points,
      heights.map((height) => height / whole),
    );
  };

  it('is nothing where they add less than a fifth to what was known', () => {
    expect(said(1 / 1.21)).not.toBeNull();
    expect(said(1 / 1.19)).toBeNull();
  });
});
