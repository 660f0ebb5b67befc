import { describe, expect, it } from 'vitest';
import type { BedMake } from '../../../src/seedbed/bed.js';
import { throughSnow } from '../../../src/seedbed/surface/snow.js';
import { surfaceOf } from '../../../src/seedbed/surface/surface.js';

const bare: BedMake = { kind: 'open-ground', cover: 'bare', moisture: 'rain', shadePercent: 0 };
/** What sunshine adds on a sunny summer day: 32 and 18 °C, and 26 MJ m⁻² at the ground of the 43.4 above the atmosphere. */
const sunK = (bed: Partial<BedMake>): number => surfaceOf({ ...bare, ...bed }, null).sunK(14, 43.44);
const beside = (bed: Partial<BedMake>, other: Partial<BedMake> = {}): number => sunK(bed) / sunK(other);

describe('what sunshine adds to a bed', () => {
  it('is more under film and fleece by the published rises of the mean on such a day, and less by a kelvin under mulch', () => {
    // Lamont (1993), Ham (1993): 4 K under clear film, half of it under black; 1 K under fleece.
    expect(sunK({ cover: 'clear-film' }) - sunK({})).toBeCloseTo(4, 1);
    expect(sunK({ cover: 'black-film' }) - sunK({})).toBeCloseTo(2, 1);
    expect(sunK({ cover: 'fleece' }) - sunK({})).toBeCloseTo(1, 1);
    expect(sunK({ cover: 'mulch' }) - sunK({})).toBeCloseTo(-1, 1);
  });

  it('is by the contrast of wet and dry surfaces two thirds on moist soil, half on wet, and a little more on dry', () => {
    expect(beside({ moisture: 'moist' })).toBeCloseTo(0.68, 3);
    expect(beside({ moisture: 'wet' })).toBeCloseTo(0.48, 3);
    expect(beside({ moisture: 'dry' })).toBeCloseTo(1.06, 3);
  });

  it('is on moist peat in the middle of white and black peat, 0.020 and 0.025 K for each W m⁻² where bare ground has 0.034', () => {
    for (const kind of ['pot', 'tray'] as const) {
      for (const moisture of ['moist', 'rain'] as const) {
        expect(0.034 * beside({ kind, moisture })).toBeCloseTo((0.02 + 0.025) / 2, 5);
      }
    }
  });

  it('is on wet peat less in the proportion in which it is on wet soil, and on dry peat what it is on bare ground', () => {
    const proportion = beside({ kind: 'pot', moisture: 'wet' }, { kind: 'pot', moisture: 'moist' });
    expect(proportion / beside({ moisture: 'wet' }, { moisture: 'moist' })).toBeCloseTo(1, 1);
    expect(beside({ kind: 'pot', moisture: 'dry' })).toBeCloseTo(1, 5);
  });

  it('is a tenth more on a raised bed, and in half shade less by 35 %, as shade keeps off the cold of the sky, too', () => {
    expect(beside({ kind: 'raised-bed' })).toBeCloseTo(1.1, 9);
    expect(beside({ shadePercent: 50 })).toBeCloseTo(1 - 0.35, 9);
  });
});

describe('a bed that was never compared with a measured one', () => {
  it('errs by squares twice as large', () => {
    const scaleOf = (bed: Partial<BedMake>): number => surfaceOf({ ...bare, ...bed }, null).residuals.scale;
    expect(scaleOf({ kind: 'raised-bed' })).toBe(2 * scaleOf({}));
    expect(scaleOf({ shadePercent: 10 })).toBe(2 * scaleOf({}));
  });
});

describe('snow', () => {
  it('insulates the more the more of it lies, and no more after a hundred days of frost', () => {
    expect(throughSnow(5, 100)).toBeLessThan(throughSnow(5, 95));
    expect(throughSnow(5, 200)).toBe(throughSnow(5, 100));
  });
});
