import { describe, expect, it } from 'vitest';
import { annualHarmonic, annualHarmonicAt, annualProfile } from '../../../src/seedbed/conduction/annual-start.js';
import { seasonByLatitude } from '../../../src/seedbed/surface/season-by-latitude.js';
import { seasonalPersistence } from '../../../src/seedbed/surface/seasonal-persistence.js';

const peakOf = (latitudeDeg: number): number => {
  const wave = annualHarmonic([100], [10], latitudeDeg);
  return Array.from({ length: 365 }, (_, day) => day).reduce((best, day) =>
    annualHarmonicAt(wave, day) > annualHarmonicAt(wave, best) ? day : best,
  );
};
const swingOf = (latitudeDeg: number): number => {
  const { cosineK, sineK } = annualHarmonic([100], [10], latitudeDeg);
  return Math.hypot(cosineK, sineK);
};

describe('the annual harmonic of a place without a year of data', () => {
  it('is whole from 30° on, half at 15°, nothing at the equator', () => {
    expect(seasonByLatitude(30, 12, 197, 14).amplitudeK).toBe(12);
    expect(seasonByLatitude(-29, 12, 197, 14).amplitudeK).toBeCloseTo(11.6, 9);
    expect(seasonByLatitude(15, 12, 197, 14).amplitudeK).toBe(6);
    expect(seasonByLatitude(0, 12, 197, 14).amplitudeK).toBe(0);
  });

  it('has an amplitude at the surface a tenth wider than the 11 K of 13 stations at 5 cm', () => {
    expect(swingOf(44)).toBeGreaterThan(11.9);
    expect(swingOf(44)).toBeLessThan(12.3);
  });

  it('peaks in mid-July in the north, a week before the soil at 5 cm does on the 204th day, and half a year from there in the south', () => {
    expect(1 + peakOf(44)).toBe(204 - 7);
    const half = 365.2425 / 2;
    expect(Math.abs(1 + peakOf(-44) - (204 - 7 - half))).toBeLessThanOrEqual(0.5);
  });

  it('brings a quarter of the harmonic’s cold below freezing, because water freezes and snow lies', () => {
    const ground = { depthsCm: Float64Array.of(0, 5), conductivity: 1, heatCapacity: 2.5e6 };
    const wave = { meanC: -8, cosineK: 0, sineK: 0 };
    expect([...annualProfile(ground, wave, 0, Infinity)]).toEqual([-2, -2]);
  });
});

describe('seasonal persistence', () => {
  it('has its level from the last month, and knows nothing of the day before it', () => {
    const month = Array.from({ length: 30 }, (_, day) => 8 + day / 10);
    expect(seasonalPersistence([40, ...month], 91, 44, 5)).toEqual(seasonalPersistence(month, 91, 44, 5));
    expect(seasonalPersistence(month.slice(1), 91, 44, 5)).not.toEqual(seasonalPersistence(month, 91, 44, 5));
  });
});
