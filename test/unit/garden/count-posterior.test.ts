import { describe, expect, it } from 'vitest';
import type { SeenCount } from '../../../src/garden/learning/count-odds.js';
import { countPosterior, type SeenSowing, SPREADS } from '../../../src/garden/learning/count-posterior.js';
import { likelihoodAsGaussian } from '../../../src/garden/learning/likelihood-as-gaussian.js';
import { standFactorOf, timeFactorOf } from '../../../src/garden/learning/posterior-factors.js';
import { usualPrior } from '../../../src/garden/learning/prior.js';
import { COHORTS } from '../../../src/germination/run/cohorts.js';
import { largestDelayFactors } from '../../../src/germination/run/largest-delay-factors.js';
import { cropCalled, seedOf } from '../germination/make.js';

const onion = cropCalled('onion');
const seed = seedOf(onion);
const steady = new Float64Array(60 * 24).fill(15);

type Counted = readonly (readonly [day: number, seedlings: number, more?: Partial<SeenCount>])[];

/** Counts of 200 onion seeds at 15 °C, of which nine in ten come in a laboratory. */
const seen = (counts: Counted): SeenSowing => ({
  counts: counts.map(([, seedlings, more]) => ({ seedlings, ofSeeds: 200, isAtLeast: false, ...more })),
  reaches: SPREADS.map(({ times }) =>
    largestDelayFactors(
      { ...seed, sigmaLog10: seed.sigmaLog10 * times },
      steady,
      counts.map(([day]) => 24 * day),
    ),
  ),
  viable: 0.9,
});
const posteriorOf = (counts: SeenSowing) => countPosterior(usualPrior(onion), counts);
const said = (counts: Counted) => posteriorOf(seen(counts));

describe('what counts say', () => {
  it('is the belief itself where nothing could be up yet', () => {
    const early = timeFactorOf(said([[0, 0]]));
    expect(early.middle).toBeCloseTo(Math.sqrt(2.3), 2);
    expect(said([[0, 0]]).dead).toBeCloseTo(0.07, 6);
  });

  it('of a sowing half up on the 14th day is twice the chart’s 7', () => {
    const { middle, from, to } = timeFactorOf(
      said([
        [11, 10],
        [14, 60],
        [18, 112],
        [24, 120],
      ]),
    );
    expect(middle).toBeGreaterThan(1.85);
    expect(middle).toBeLessThan(2.15);
    expect(from).toBeGreaterThan(1.7);
    expect(to).toBeLessThan(2.3);
  });

  it('of 120 of 200, where 180 come in a laboratory, is two thirds of its stand', () => {
    expect(
      standFactorOf(
        said([
          [24, 120],
          [30, 120],
        ]),
      ).middle,
    ).toBeCloseTo(2 / 3, 1);
  });

  it('more seedlings never mean a smaller stand, nor a deader sowing', () => {
    let last = { stand: 0, dead: 1 };
    for (const seedlings of [0, 2, 5, 20, 60, 120, 180, 200]) {
      const posterior = said([
        [20, seedlings],
        [25, seedlings],
      ]);
      const now = { stand: standFactorOf(posterior).middle, dead: posterior.dead };
      expect(now.stand).toBeGreaterThanOrEqual(last.stand);
      // Once some are up it is all but ruled out, and only how wild the counts look changes it.
      expect(now.dead).toBeLessThanOrEqual(Math.max(last.dead, 1e-3));
      last = now;
    }
  });

  it('the order of counts does not matter', () => {
    const rising = seen([
      [11, 10],
      [14, 60],
      [18, 112],
    ]);
    const row = (reach: Float64Array, i: number) => [...reach.subarray(i * COHORTS, (i + 1) * COHORTS)];
    const falling = {
      ...rising,
      counts: [...rising.counts].reverse(),
      reaches: rising.reaches.map((reach) => Float64Array.from([2, 1, 0].flatMap((i) => row(reach, i)))),
    };
    const [one, other] = [timeFactorOf(posteriorOf(rising)), timeFactorOf(posteriorOf(falling))];
    expect(other.middle).toBeCloseTo(one.middle, 9);
    expect([other.from, other.to].map((end) => end.toFixed(9))).toEqual(
      [one.from, one.to].map((end) => end.toFixed(9)),
    );
  });

  it('of a count on each day of a year, whose odds are too small for a number, a stand comes all the same', () => {
    const daily = Array.from({ length: 330 }, (_, i): Counted[number] => [30 + i / 12, 450, { ofSeeds: 1000 }]);
    const posterior = said(daily);
    expect(posterior.dead).toBeLessThan(1e-6);
    // Half of the 900 that come in a laboratory.
    expect(standFactorOf(posterior).middle).toBeCloseTo(0.5, 1);
  });

  it('what counts say alone has a spread, however sure they are', () => {
    const points = Float64Array.from({ length: 61 }, (_, i) => (i - 30) / 10);
    const odds = points.map((point) => Number(point === 1));
    const { mean, sd } = likelihoodAsGaussian({ mean: 0, sd: 1 }, points, odds)!;
    expect(mean).toBeCloseTo(1, 2);
    expect(sd).toBeGreaterThan(0.01);
  });

  it('one wild count among five moves the middle by less than a tenth', () => {
    const right: Counted = [
      [11, 10],
      [14, 60],
      [18, 112],
      [22, 118],
      [26, 120],
    ];
    const wild: Counted = [
      [11, 10],
      [14, 60],
      [18, 112],
      [22, 3],
      [26, 120],
    ];
    const [calm, moved] = [said(right), said(wild)];
    expect(Math.abs(timeFactorOf(moved).middle / timeFactorOf(calm).middle - 1)).toBeLessThan(0.1);
    expect(Math.abs(standFactorOf(moved).middle / standFactorOf(calm).middle - 1)).toBeLessThan(0.1);
  });

  it('a bare row past all that is slow is dead, and one that is not yet due is not', () => {
    expect(
      said([
        [4, 0],
        [6, 0],
      ]).dead,
    ).toBeLessThan(0.15);
    expect(
      said([
        [12, 0],
        [20, 0],
        [28, 0],
      ]).dead,
    ).toBeGreaterThan(0.9);
  });

  it('a count after thinning by nobody knows how many says only that so many came', () => {
    const exact = standFactorOf(said([[25, 40]]));
    const atLeast = standFactorOf(said([[25, 40, { isAtLeast: true }]]));
    expect(atLeast.middle).toBeGreaterThan(exact.middle + 0.1);
  });

  it('millions of seeds take no longer than hundreds', () => {
    const started = performance.now();
    said(Array.from({ length: 50 }, () => [25, 4_000_000, { ofSeeds: 10_000_000, isAtLeast: true }]));
    expect(performance.now() - started).toBeLessThan(2000);
  });
});
