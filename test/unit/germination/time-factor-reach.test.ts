import { describe, expect, it } from 'vitest';
import { COHORTS, cohortRun } from '../../../src/germination/run/cohorts.js';
import { largestDelayFactors, shareUp } from '../../../src/germination/run/largest-delay-factors.js';
import { countUpBy } from '../../../src/germination/run/outcome.js';
import { cropCalled, seedOf } from './make.js';

/** A spring that warms, with day and night, and a few hot days in it. */
const spring = Float64Array.from({ length: 60 * 24 }, (_, hour) => {
  const hot = hour > 20 * 24 && hour < 23 * 24 ? 12 : 0;
  return 9 + hour / 200 + hot + 5 * Math.sin((2 * Math.PI * (hour - 9)) / 24);
});
const atH = [0, 100, 250.5, 480, 700, 1439];

describe('how slow a sowing can be and still be up', () => {
  it.each(['onion', 'lettuce', 'spinach', 'celery'])(
    'is for %s what the sowing run with that time factor does',
    (id) => {
      const seed = seedOf(cropCalled(id));
      const reach = largestDelayFactors(seed, spring, atH);
      for (const timeFactor of [0.7, 1, 1.4, 2.3, 5]) {
        const run = cohortRun({ ...seed, timeFactor }, spring);
        atH.forEach((hour, at) => {
          const up = countUpBy(run, hour);
          expect(Math.abs(shareUp(reach, timeFactor, at * COHORTS) * COHORTS - up)).toBeLessThanOrEqual(1);
        });
      }
    },
  );

  it('is half of onion after 14 days at 15 °C with a time factor of 2: the handbook’s 7 days twice', () => {
    const steady = new Float64Array(30 * 24).fill(15);
    // Harrington and Minges (1954), as printed in Knott's Handbook: onion at 15 °C, 7 days.
    expect(shareUp(largestDelayFactors(seedOf(cropCalled('onion')), steady, [14 * 24]), 2)).toBeCloseTo(0.5, 1);
  });

  it('never falls with time, nor rises with the time factor', () => {
    const reach = largestDelayFactors(seedOf(cropCalled('lettuce')), spring, atH);
    for (let at = 0; at < atH.length; at++) {
      for (let timeFactor = 0.5; timeFactor < 4; timeFactor += 0.1) {
        const up = shareUp(reach, timeFactor, at * COHORTS);
        expect(shareUp(reach, timeFactor + 0.1, at * COHORTS)).toBeLessThanOrEqual(up);
        if (at > 0) expect(up).toBeGreaterThanOrEqual(shareUp(reach, timeFactor, (at - 1) * COHORTS));
      }
    }
  });
});
