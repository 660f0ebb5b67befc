import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ScienceError } from '../../../src/basics/errors.js';
import { diurnalAmplitudeAtDepthK, lagH } from '../../../src/seedbed/conduction/damping.js';
import {
  diffusivityFromAmplitudes,
  diffusivityFromLag,
  diffusivityFromTwoProbes,
} from '../../../src/seedbed/probe/diffusivity-from-two-probes.js';

/** A day's wave on a drift, so many hours late. */
const record = (nHours: number, swingK: number, lateH: number, driftK = 0): Float64Array =>
  Float64Array.from(
    { length: nHours },
    (_, hour) => 15 + driftK * hour + swingK * Math.sin((2 * Math.PI * (hour - lateH)) / 24),
  );

describe('diffusivityFromTwoProbes', () => {
  it('finds what two waves were made with, within 1 %, under a trend and over any part of days', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 72, max: 700 }),
        fc.double({ min: 1e-7, max: 12e-7, noNaN: true }),
        fc.double({ min: 4, max: 10, noNaN: true }),
        fc.double({ min: -12, max: 12, noNaN: true }),
        (nHours, diffusivityM2s, apartCm, lateH) => {
          const lowerK = diurnalAmplitudeAtDepthK(8, 0, apartCm, diffusivityM2s, 24);
          const laterH = lateH + lagH(0, apartCm, diffusivityM2s, 24);
          const found = diffusivityFromTwoProbes(record(nHours, 8, lateH), record(nHours, lowerK, laterH), apartCm);
          for (const one of Object.values(found)) expect(one! / diffusivityM2s).toBeCloseTo(1, 1.7);
          const drifting = diffusivityFromTwoProbes(
            record(nHours, 8, lateH, 0.02),
            record(nHours, lowerK, laterH, 0.02),
            apartCm,
          );
          expect(drifting.diffusivityM2s! / diffusivityM2s).toBeGreaterThan(0.9);
          expect(drifting.diffusivityM2s! / diffusivityM2s).toBeLessThan(1.1);
        },
      ),
    );
  });

  it('accepts none when amplitude and lag disagree by more than 30 %, and still returns both', () => {
    // Swing as for 5e-7 m²/s over 5 cm; the lag is scaled so that its κ is larger by the factor.
    const lowerK = diurnalAmplitudeAtDepthK(8, 0, 5, 5e-7, 24);
    const withLagFor = (factor: number) =>
      diffusivityFromTwoProbes(record(240, 8, 0), record(240, lowerK, lagH(0, 5, 5e-7, 24) / Math.sqrt(factor)), 5);
    expect(withLagFor(1.28).diffusivityM2s! * 1e7).toBeGreaterThan(5);
    expect(withLagFor(1.32).diffusivityM2s).toBeNull();
    expect(withLagFor(1.32).byLagM2s! * 1e7).toBeCloseTo(6.6, 1);
    expect(withLagFor(1.32).byAmplitudeM2s! * 1e7).toBeCloseTo(5, 1);
  });

  it('accepts none that no soil has', () => {
    const depths = (diffusivityM2s: number) =>
      diffusivityFromTwoProbes(
        record(240, 8, 0),
        record(240, diurnalAmplitudeAtDepthK(8, 0, 5, diffusivityM2s, 24), lagH(0, 5, diffusivityM2s, 24)),
        5,
      ).diffusivityM2s;
    expect(depths(0.6e-7)).not.toBeNull();
    expect(depths(0.4e-7)).toBeNull();
    expect(depths(14e-7)).not.toBeNull();
    expect(depths(17e-7)).toBeNull();
  });

  it('finds nothing when the lower probe has a larger amplitude, leads, or has no wave', () => {
    const upper = record(240, 5, 0);
    expect(diffusivityFromTwoProbes(upper, record(240, 6, 2), 5)).toMatchObject({ byAmplitudeM2s: null });
    expect(diffusivityFromTwoProbes(upper, record(240, 4, -2), 5)).toMatchObject({ byLagM2s: null });
    for (const other of [record(240, 6, 2), record(240, 4, -2), upper, new Float64Array(240)]) {
      expect(diffusivityFromTwoProbes(upper, other, 5).diffusivityM2s).toBeNull();
    }
    expect(diffusivityFromAmplitudes(5, 5, 5)).toBeNull();
    expect(diffusivityFromLag(0, 5)).toBeNull();
  });

  it('refuses short records, records that differ in length, and gaps', () => {
    const upper = record(100, 5, 0);
    const gap = record(100, 4, 1);
    gap[7] = Number.NaN;
    for (const [one, other] of [
      [upper.subarray(0, 71), upper.subarray(0, 71)],
      [upper, upper.subarray(1)],
      [upper, gap],
    ] as const) {
      expect(() => diffusivityFromTwoProbes(one, other, 5)).toThrow(ScienceError);
    }
  });
});
