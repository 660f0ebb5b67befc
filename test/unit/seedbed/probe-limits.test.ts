import { describe, expect, it } from 'vitest';
import { probit } from '../../../src/basics/numerics/probit.js';
import { diurnalAmplitudeAtDepthK, lagH } from '../../../src/seedbed/conduction/damping.js';
import { diffusivityFromTwoProbes } from '../../../src/seedbed/probe/diffusivity-from-two-probes.js';
import { probeOutliers } from '../../../src/seedbed/probe/probe-outliers.js';
import { probeUpdate } from '../../../src/seedbed/probe/probe-update.js';
import { upwardInversionC } from '../../../src/seedbed/probe/upward-inversion.js';
import { residualCovarianceK2, residualsWithRain } from '../../../src/seedbed/surface/residual-model.js';

/** A wave as it is some way down, by the analytic solution. */
const wave = (hours: number, periodH: number, downCm: number, diffusivityM2s: number): Float64Array =>
  Float64Array.from({ length: hours }, (_, hour) => {
    const since = hour - lagH(0, downCm, diffusivityM2s, periodH);
    return (
      10 + diurnalAmplitudeAtDepthK(5, 0, downCm, diffusivityM2s, periodH) * Math.sin((2 * Math.PI * since) / periodH)
    );
  });

describe('readings brought higher up', () => {
  it('have all of an 8 h wave, half of one whose frequency lies halfway to a 4 h wave’s, and none of that', () => {
    const shareOf = (periodH: number): number => {
      const lifted = upwardInversionC(wave(20 * 24, periodH, 3, 5e-7), 3, 0, 5e-7).subarray(9 * 24, 11 * 24);
      // Of a whole number of periods the mean square is half the square of the swing.
      const square = lifted.reduce((sum, tempC) => sum + (tempC - 10) ** 2, 0) / lifted.length;
      return Math.sqrt(2 * square) / 5;
    };
    expect(shareOf(8)).toBeCloseTo(1, 2);
    expect(shareOf(16 / 3)).toBeCloseTo(0.5, 2);
    expect(shareOf(4)).toBeCloseTo(0, 2);
  });

  it('need two days of hours', () => {
    expect(upwardInversionC(new Float64Array(48).fill(10), 3, 0, 5e-7)).toHaveLength(48);
    expect(() => upwardInversionC(new Float64Array(47).fill(10), 3, 0, 5e-7)).toThrow('at least 48 hours');
  });
});

describe('ground between two probes', () => {
  const isSoil = (diffusivityM2s: number): boolean =>
    diffusivityFromTwoProbes(wave(240, 24, 0, diffusivityM2s), wave(240, 24, 2, diffusivityM2s), 2).diffusivityM2s !==
    null;

  it('is soil from dry peat’s 0.5e-7 m²/s to 15e-7, beyond the wettest sand', () => {
    expect(isSoil(0.52e-7)).toBe(true);
    expect(isSoil(0.48e-7)).toBe(false);
    expect(isSoil(14.5e-7)).toBe(true);
    expect(isSoil(15.5e-7)).toBe(false);
  });
});

describe('readings that nothing explains', () => {
  /** A week of -k, 0 and k by turns, with one hour of another. */
  const doubted = (k: number, odd: number): boolean =>
    probeOutliers(Float64Array.from({ length: 168 }, (_, hour) => (hour === 50 ? odd : k * ((hour % 3) - 1)))).length >
    0;

  it('lie four standard deviations off, estimated from the median absolute deviation of a normal distribution', () => {
    // The median absolute deviation of -k, 0 and k is k.
    const limitK = (4 * 2) / probit(0.75);
    expect(doubted(2, 1.01 * limitK)).toBe(true);
    expect(doubted(2, 0.99 * limitK)).toBe(false);
  });

  it('lie 6 K off at least, what the model itself may err by in an hour', () => {
    expect(doubted(0, 6.1)).toBe(true);
    expect(doubted(0, 5.9)).toBe(false);
  });

  it('are found from three days of hours on', () => {
    const known = (hours: number) => probeOutliers(Float64Array.from({ length: hours }, (_, h) => (h === 5 ? 30 : 0)));
    expect(known(72)).toEqual([5]);
    expect(known(71)).toEqual([]);
  });
});

describe('how long a model’s errors last', () => {
  const model = { ...residualsWithRain(0), siteK2: [0, 0, 0] as const };

  it('is 2.2 days for the weather’s and 80 for the season’s, each time to 1/e of 0.75 and 0.70 K²', () => {
    const atDays = (days: number): number => residualCovarianceK2(model, days, 0, 0) / model.scale;
    expect(atDays(2.2)).toBeCloseTo(0.75 / Math.E + 0.7 * Math.exp(-2.2 / 80), 6);
    expect(atDays(80)).toBeCloseTo(0.7 / Math.E, 6);
  });

  it('makes a reading of the same season last year count, and none that is older', () => {
    /** How sure the first day is, whose one reading is followed by 60 others, the last so many days later. */
    const sdAfter = (days: number): number => {
      const later = Array.from({ length: 60 }, (_, i) => days - 59 + i);
      const probe = { days: [0, ...later], sun: new Array(61).fill(0), residualsK: new Array(61).fill(1) };
      return probeUpdate(model, probe, { days: [0], sun: [0] }).sdK[0]!;
    };
    expect(sdAfter(365)).toBeLessThan(0.5);
    expect(sdAfter(366)).toBeGreaterThan(0.9);
  });
});
