import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultBed } from '../../src/answers/question.js';
import { type SoilDay, soilTemperatures } from '../../src/answers/soil/soil-temperatures.js';
import { findZone, type PlainDate } from '../../src/basics/calendar.js';
import type { TemperatureSeries } from '../../src/basics/series.js';
import { readSeries } from '../../src/readings/read-series.js';
import { type BedMake, covers, moistures } from '../../src/seedbed/bed.js';
import { dateAfter } from '../api/helper.js';

// Laws of the soil, whatever the weather, the bed and the order in which things are sent.

const zone = findZone('Etc/GMT+2')!;
const START = '2027-04-10';
const RUNS = { numRuns: Number(process.env.PROPERTY_RUNS ?? 40), seed: Number(process.env.PROPERTY_SEED ?? 4) };

const soil = (
  series: readonly TemperatureSeries[],
  depthCm: number,
  bed: Partial<BedMake> = {},
  from = 20,
): readonly SoilDay[] =>
  soilTemperatures({
    site: { zone, latitude: 44, longitude: -30, annualRainMm: null },
    bed: { ...defaultBed, ...bed },
    // A tray is five centimetres deep.
    depthCm: bed.kind === 'tray' ? depthCm / 2 : depthCm,
    series: series.map((one) => readSeries(one, zone, [])),
    understood: [],
    from: dateAfter(START, from) as PlainDate,
    to: null,
    step: 'day',
    beyond: null,
    normals: null,
  }).daily!;

/** Thirty days of weather above freezing: means and ranges. Deep down last winter’s frost may still lie. */
const weathers = fc
  .array(fc.tuple(fc.double({ min: 15, max: 26, noNaN: true }), fc.double({ min: 1, max: 14, noNaN: true })), {
    minLength: 30,
    maxLength: 30,
  })
  .map((days) =>
    days.map(([mean, range], day) => ({
      date: dateAfter(START, day) as PlainDate,
      min: mean - range / 2,
      max: mean + range / 2,
    })),
  );
const beds = fc.record({
  kind: fc.constantFrom('open-ground', 'raised-bed', 'pot', 'tray'),
  cover: fc.constantFrom(...covers),
  moisture: fc.constantFrom(...moistures),
  shadePercent: fc.constantFrom(0, 40, 100),
});
const depths = fc.constantFrom(0.5, 1.3, 3, 5, 10);
const air = (daily: { date: PlainDate; min: number; max: number }[]): TemperatureSeries => ({
  medium: 'air',
  unit: 'C',
  daily,
});

describe('soil under any weather', () => {
  it('is a degree warmer where the air is, day and night, all along', () => {
    fc.assert(
      fc.property(weathers, beds, depths, (days, bed, depthCm) => {
        const asIs = soil([air(days)], depthCm, bed);
        const warmer = soil([air(days.map((day) => ({ ...day, min: day.min + 1, max: day.max + 1 })))], depthCm, bed);
        asIs.forEach((day, i) => {
          expect(warmer[i]!.mean - day.mean).toBeCloseTo(1, 3);
          expect(warmer[i]!.max - day.max).toBeCloseTo(1, 3);
        });
      }),
      RUNS,
    );
  });

  it('is never colder anywhere for one warmer day, nor warmer for more shade or water', () => {
    fc.assert(
      fc.property(weathers, beds, depths, fc.nat({ max: 29 }), (days, bed, depthCm, which) => {
        const asIs = soil([air(days)], depthCm, bed);
        const warmed = days.map((day, i) => (i === which ? { ...day, min: day.min + 3, max: day.max + 3 } : day));
        soil([air(warmed)], depthCm, bed).forEach((day, i) => {
          expect(day.mean).toBeGreaterThan(asIs[i]!.mean - 0.05);
        });
        const wetter = { ...bed, shadePercent: Math.min(100, bed.shadePercent + 30), moisture: 'wet' as const };
        soil([air(days)], depthCm, wetter).forEach((day, i) => {
          expect(day.mean).toBeLessThanOrEqual(asIs[i]!.mean + 1e-4);
        });
      }),
      RUNS,
    );
  });

  it('is told the same whatever the order of series, and with a series sent twice', () => {
    fc.assert(
      fc.property(weathers, weathers, depths, (days, other, depthCm) => {
        const probe: TemperatureSeries = { medium: 'soil', unit: 'C', probeDepthCm: 8, daily: other.slice(5, 20) };
        const once = soil([air(days), probe], depthCm);
        expect(soil([probe, air(days)], depthCm)).toEqual(once);
        expect(soil([probe, air(days), probe], depthCm)).toEqual(once);
      }),
      RUNS,
    );
  });

  it('is known best where a probe lies, and less and less surely after it', () => {
    fc.assert(
      fc.property(weathers, depths, (days, depthCm) => {
        const probe: TemperatureSeries = { medium: 'soil', unit: 'C', probeDepthCm: depthCm, daily: days.slice(0, 15) };
        const told = soil([air(days), probe], depthCm, {}, 5);
        const sure = told.map(({ plusMinus }) => plusMinus);
        expect(Math.max(...sure.slice(0, 9))).toBeLessThan(Math.min(...sure.slice(12)));
        const without = soil([air(days)], depthCm, {}, 5);
        told.forEach(({ plusMinus }, i) => {
          expect(plusMinus).toBeLessThanOrEqual(without[i]!.plusMinus + 1e-9);
        });
      }),
      RUNS,
    );
  });
});
