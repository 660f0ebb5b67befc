import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ScienceError } from '../../../src/basics/errors.js';
import { dampingDepthCm, diurnalAmplitudeAtDepthK, lagH } from '../../../src/seedbed/conduction/damping.js';
import { fft } from '../../../src/seedbed/conduction/fft.js';
import { MIN_INVERSION_HOURS, upwardInversionC } from '../../../src/seedbed/probe/upward-inversion.js';

interface Sine {
  readonly swingK: number;
  readonly periodH: number;
  readonly startH: number;
}

/** Waves about a mean, as they are `downCm` below where they were given, by the analytic solution. */
function waves(nHours: number, meanC: number, sines: readonly Sine[], downCm: number, diffusivityM2s: number) {
  return Float64Array.from({ length: nHours }, (_, hour) =>
    sines.reduce((sum, { swingK, periodH, startH }) => {
      const sinceStart = hour - startH - lagH(0, downCm, diffusivityM2s, periodH);
      return (
        sum +
        diurnalAmplitudeAtDepthK(swingK, 0, downCm, diffusivityM2s, periodH) *
          Math.sin((2 * Math.PI * sinceStart) / periodH)
      );
    }, meanC),
  );
}

const worst = (a: Float64Array, b: Float64Array): number => Math.max(...a.map((value, i) => Math.abs(value - b[i]!)));

describe('fft', () => {
  it('is the sum that defines it, and is inverted by exchanging its parts', () => {
    const given = [3, -1, 4, 1, -5, 9, 2, -6];
    const n = given.length;
    const [real, imag] = [Float64Array.from(given), new Float64Array(n)];
    fft(real, imag);
    for (let k = 0; k < n; k++) {
      const angles = given.map((_, j) => (2 * Math.PI * j * k) / n);
      expect(real[k]).toBeCloseTo(
        given.reduce((sum, value, j) => sum + value * Math.cos(angles[j]!), 0),
        12,
      );
      expect(imag[k]).toBeCloseTo(
        given.reduce((sum, value, j) => sum - value * Math.sin(angles[j]!), 0),
        12,
      );
    }
    fft(imag, real);
    for (const [j, value] of given.entries()) expect(real[j]! / n).toBeCloseTo(value, 12);
  });
});

describe('upwardInversionC', () => {
  it('restores two sines that were propagated down, to the first and the last hour, within 0.04 K of 10 K', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5 * 24, max: 40 * 24 }),
        fc.double({ min: 2e-7, max: 10e-7, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 24, noNaN: true }),
        fc.double({ min: 0, max: 12, noNaN: true }),
        (nHours, diffusivityM2s, shareOfReach, startH, otherStartH) => {
          const sines = [
            { swingK: 8, periodH: 24, startH },
            { swingK: 2, periodH: 12, startH: otherStartH },
          ];
          const upCm = shareOfReach * dampingDepthCm(diffusivityM2s, 24);
          const below = waves(nHours, 15, sines, upCm, diffusivityM2s);
          const above = waves(nHours, 15, sines, 0, diffusivityM2s);
          expect(worst(upwardInversionC(below, upCm + 1, 1, diffusivityM2s), above)).toBeLessThan(0.04);
        },
      ),
    );
  });

  it('restores a wave of weeks under the diurnal one, away from the ends within 0.15 K', () => {
    const sines = [
      { swingK: 8, periodH: 24, startH: 9 },
      { swingK: 4, periodH: 400, startH: 50 },
    ];
    const [below, above] = [9, 0].map((downCm) => waves(30 * 24, 15, sines, downCm, 5e-7));
    const back = upwardInversionC(below!, 10, 1, 5e-7);
    expect(worst(below!, above!)).toBeGreaterThan(4);
    expect(worst(back.subarray(24, -24), above!.subarray(24, -24))).toBeLessThan(0.15);
    expect(worst(back, above!)).toBeLessThan(1);
  });

  it('leaves a constant bed constant, and follows a shifted mean', () => {
    const flat = new Float64Array(200).fill(12.3);
    expect(worst(upwardInversionC(flat, 10, 1, 5e-7), flat)).toBeLessThan(1e-12);
    const below = waves(200, 15, [{ swingK: 3, periodH: 24, startH: 3 }], 0, 5e-7);
    const moved = upwardInversionC(
      below.map((tempC) => tempC + 7),
      10,
      1,
      5e-7,
    );
    expect(
      worst(
        moved,
        upwardInversionC(below, 10, 1, 5e-7).map((tempC) => tempC + 7),
      ),
    ).toBeLessThan(1e-9);
  });

  it('at the probe’s own depth changes nothing but waves of a few hours', () => {
    const below = waves(200, 15, [{ swingK: 3, periodH: 24, startH: 3 }], 0, 5e-7);
    expect(worst(upwardInversionC(below, 10, 10, 5e-7), below)).toBeLessThan(0.001);
    const fast = waves(200, 15, [{ swingK: 1, periodH: 3, startH: 0 }], 0, 5e-7);
    expect(Math.max(...upwardInversionC(fast, 10, 10, 5e-7).map((tempC) => Math.abs(tempC - 15)))).toBeLessThan(0.1);
  });

  it('makes of a logger’s steps of 0.1 K no more than 0.3 K, even at its farthest', () => {
    const smooth = waves(2000, 15, [{ swingK: 3, periodH: 24, startH: 5 }], 11.7, 5e-7);
    const stepped = smooth.map((tempC) => Math.round(tempC * 10) / 10);
    expect(worst(upwardInversionC(stepped, 11.7, 0, 5e-7), upwardInversionC(smooth, 11.7, 0, 5e-7))).toBeLessThan(0.3);
  });

  it('does not change its input', () => {
    const below = waves(200, 15, [{ swingK: 3, periodH: 24, startH: 3 }], 0, 5e-7);
    const copy = below.slice();
    upwardInversionC(below, 10, 5, 5e-7);
    expect(below).toEqual(copy);
  });

  it('refuses too short a record, a gap, downward, and beyond one damping depth', () => {
    const hours = new Float64Array(MIN_INVERSION_HOURS).fill(10);
    expect(upwardInversionC(hours, 11.7, 0, 5e-7)).toHaveLength(MIN_INVERSION_HOURS);
    const gap = hours.slice();
    gap[20] = Number.NaN;
    for (const [given, fromCm, toCm, diffusivityM2s] of [
      [hours.subarray(1), 10, 5, 5e-7],
      [gap, 10, 5, 5e-7],
      [hours, 5, 10, 5e-7],
      [hours, 11.8, 0, 5e-7],
      [hours, 10, 5, -5e-7],
      [hours, 10, 5, Number.NaN],
    ] as const) {
      expect(() => upwardInversionC(given, fromCm, toCm, diffusivityM2s)).toThrow(ScienceError);
    }
  });
});
