import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fadingAnomaly } from '../../../src/climate/fading-anomaly.js';

const lag1 = fc.double({ min: 0.01, max: 0.99, noNaN: true });
const days = fc.integer({ min: 0, max: 60 });

describe('fadingAnomaly', () => {
  it('is exact today, and after a season has only the climatological spread', () => {
    expect(fadingAnomaly(3, 2.25, 0.88, 0)).toEqual({ meanK: 3, sdK: 0 });
    const later = fadingAnomaly(3, 2.25, 0.88, 365);
    expect(later.meanK).toBeCloseTo(0, 9);
    expect(later.sdK).toBeCloseTo(2.25, 9);
  });

  it('forgets at once without correlation', () => {
    expect(fadingAnomaly(3, 2, 0, 1)).toEqual({ meanK: 0, sdK: 2 });
  });

  it('goes on from some days as from today: what is left fades again, and its spread with it', () => {
    fc.assert(
      fc.property(lag1, days, days, (rho, first, then) => {
        const whole = fadingAnomaly(3, 2, rho, first + then);
        const half = fadingAnomaly(3, 2, rho, first);
        const rest = fadingAnomaly(half.meanK, 2, rho, then);
        expect(rest.meanK).toBeCloseTo(whole.meanK, 9);
        const carriedK = half.sdK * fadingAnomaly(1, 2, rho, then).meanK;
        expect(Math.hypot(carriedK, rest.sdK)).toBeCloseTo(whole.sdK, 6);
      }),
    );
  });

  it('spreads as a run of days does that leans on each day before', () => {
    // 20 000 days by a plain recursion; the means of many pairs a week apart.
    const rho = 0.88;
    const run = new Float64Array(20_000);
    let seed = 1;
    const uniform = (): number => {
      seed = (seed * 48_271) % 2_147_483_647;
      return seed / 2_147_483_647;
    };
    const shock = (): number => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    for (let i = 1; i < run.length; i++) run[i] = rho * run[i - 1]! + 2 * Math.sqrt(1 - rho * rho) * shock();
    let squares = 0;
    for (let i = 7; i < run.length; i++) squares += (run[i]! - fadingAnomaly(run[i - 7]!, 2, rho, 7).meanK) ** 2;
    expect(Math.sqrt(squares / (run.length - 7))).toBeCloseTo(fadingAnomaly(0, 2, rho, 7).sdK, 1);
  });
});
