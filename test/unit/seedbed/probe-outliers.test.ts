import { describe, expect, it } from 'vitest';
import { probeOutliers } from '../../../src/seedbed/probe/probe-outliers.js';

const week = (errorK: (hour: number) => number): Float64Array =>
  Float64Array.from({ length: 168 }, (_, hour) => errorK(hour));

describe('probeOutliers', () => {
  it('finds the hours in which a probe lay in the sun', () => {
    const found = probeOutliers(week((hour) => Math.sin(hour) + (hour >= 60 && hour < 64 ? 12 : 0)));
    expect(found).toEqual([60, 61, 62, 63]);
  });

  it('accepts a bed that is always warmer than the model or has a wider diurnal range', () => {
    expect(probeOutliers(week(() => 9))).toEqual([]);
    expect(probeOutliers(week((hour) => 5 * Math.sin((2 * Math.PI * hour) / 24)))).toEqual([]);
  });

  it('finds nothing in too few hours', () => {
    expect(probeOutliers(week((hour) => (hour < 71 ? (hour === 5 ? 30 : 0) : NaN)))).toEqual([]);
    expect(probeOutliers(new Float64Array())).toEqual([]);
  });
});
