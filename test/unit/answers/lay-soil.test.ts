import { describe, expect, it } from 'vitest';
import { isCoarse, knownHours, sunOnClock } from '../../../src/answers/soil/known-hours.js';
import { blank, holdRoom, overlayProbe } from '../../../src/answers/soil/overlay-soil.js';
import type { Moved, ProbeAtSeed } from '../../../src/answers/soil/probe-at-seed.js';
import { type PlainDate, zoneNamed } from '../../../src/basics/calendar.js';
import { readSeries } from '../../../src/readings/read-series.js';

const zone = zoneNamed('UTC');
const site = { zone, latitude: 52, longitude: 0, annualRainMm: null };

/** A day of a probe at one temperature, whose own error is so large. */
const probe = (moved: Moved, sdK: number, tempC = 12): ProbeAtSeed => ({
  depthCm: 10,
  atProbe: {
    hourlyC: new Float64Array(24).fill(tempC),
    basis: new Uint8Array(24),
    sdK: new Float64Array(24).fill(sdK),
    swings: new Uint8Array(24).fill(1),
  },
  atSeedC: new Float64Array(24).fill(tempC),
  moved,
  isCoarse: false,
});

describe('a probe’s reading at the seed', () => {
  it('errs by its own error and by that of moving it, in quadrature: 3, 4, 5; 5, 12, 13', () => {
    const sdOf = (one: ProbeAtSeed): number => {
      const laid = blank({ startMs: 0, nHours: 24 });
      overlayProbe(laid, one, null);
      return laid.sdK[0]!;
    };
    expect(sdOf(probe('not-moved', 0.2))).toBe(0.2);
    expect(sdOf(probe('down', 0.2))).toBeCloseTo(0.25, 9);
    expect(sdOf(probe('up', 0.3))).toBeCloseTo(0.5, 9);
    expect(sdOf(probe('too-short', 0.8))).toBeCloseTo(1, 9);
    expect(sdOf(probe('too-far', 0.75))).toBeCloseTo(1.95, 9);
  });

  it('replaces a room’s temperature where they differ by half a degree, what a household thermometer may be off', () => {
    const held = (tempC: number): number => {
      const laid = blank({ startMs: 0, nHours: 48 });
      laid.hourlyC.set(new Float64Array(24).fill(tempC));
      return holdRoom(laid, [probe('not-moved', 0.2, tempC)], 20).length;
    };
    expect(held(20.5)).toBe(1);
    expect(held(20.49)).toBe(0);
  });
});

describe('what a series says by the hour', () => {
  it('shows neither night nor afternoon with fewer than four readings a day', () => {
    const every = (hours: number) => isCoarse({ usualStepMs: hours * 3_600_000 } as ReturnType<typeof readSeries>);
    expect(every(6)).toBe(false);
    expect(every(6.1)).toBe(true);
  });

  it('has days of four hours at the least and of 22 at the most, so that polar days and nights still swing', () => {
    const lengthOf = (date: string, latitude: number): number => {
      const { sunriseH, sunsetH } = sunOnClock(date as PlainDate, { ...site, latitude }, 0);
      return sunsetH - sunriseH;
    };
    expect(lengthOf('2027-12-21', 80)).toBeCloseTo(4, 9);
    expect(lengthOf('2027-06-21', 80)).toBeCloseTo(22, 9);
    // At 60° the sun keeps to its own hours, 5.9 and 18.9, as almanacs print.
    expect(lengthOf('2027-12-21', 60)).toBeCloseTo(5.9, 1);
    expect(lengthOf('2027-06-21', 60)).toBeCloseTo(18.9, 1);
  });

  it('takes nobody to be surer of a day than a tenth of a kelvin, or less sure than 15 K', () => {
    const sdOf = (plusMinusC: number): number => {
      const daily = [{ date: '2027-05-01' as PlainDate, min: 8, max: 16, plusMinus: plusMinusC }];
      const series = readSeries({ medium: 'soil', origin: 'measured', unit: 'C', daily }, zone, []);
      return knownHours(series, site, Date.UTC(2027, 4, 1), 24).sdK[12]!;
    };
    expect(sdOf(0.01)).toBe(0.1);
    expect(sdOf(30)).toBe(15);
    expect(sdOf(1.28)).toBeCloseTo(1, 9);
  });
});
