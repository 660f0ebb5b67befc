import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Crop } from '../../src/germination/crop.js';
import { crops } from '../../src/germination/crops.js';
import { type CustomCrop, customCrop } from '../../src/germination/custom-crop.js';
import { allSowings, sowingsOf } from '../../src/germination/many/all-sowings.js';
import { CHILLING_C, COHORTS, type Seed } from '../../src/germination/run/cohorts.js';
import { seedOf } from '../unit/germination/make.js';
import { differencesFromSlow } from '../unit/germination/slow-sowings.js';
import { anyCrop, anyLot } from './arbitraries.js';

const SEED = 5;
const HAIR = 1e-6;

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** The temperatures at which something changes for a crop: thresholds and its own rows [°C]. */
const edgesOf = (crop: Crop, seed: Seed): number[] => [
  seed.hotThresholdC,
  CHILLING_C,
  45,
  0,
  seed.curve.rate.peakC,
  ...seed.curve.share.falling.tempsC,
  ...crop.rows.map((row) => row.temperatureC),
];

/** A spell of weather: so many hours from one mean to another, swinging with the day; or level, on an edge. */
interface Weather {
  readonly hours: number;
  readonly fromC: number;
  readonly toC: number;
  readonly swingC: number;
  readonly edge: number | null;
}

const spell = (minC: number, maxC: number): fc.Arbitrary<Weather> =>
  fc.record({
    hours: fc.integer({ min: 1, max: 24 * 12 }),
    fromC: between(minC, maxC),
    toC: between(minC, maxC),
    swingC: between(0, 14),
    edge: fc.option(fc.nat(), { freq: 4 }),
  });

/** A spring that warms, with cold snaps, hot spells, heat that kills, and level stretches between. */
const anyYear: fc.Arbitrary<readonly Weather[]> = fc.array(
  fc.oneof(
    { weight: 3, arbitrary: spell(0, 28) },
    { weight: 2, arbitrary: spell(20, 38) },
    { weight: 2, arbitrary: spell(-4, 14) },
    { weight: 1, arbitrary: spell(36, 52) },
  ),
  { minLength: 2, maxLength: 16 },
);

const hourlyOf = (year: readonly Weather[], edges: readonly number[]): Float64Array =>
  Float64Array.from(
    year.flatMap(({ hours, fromC, toC, swingC, edge }) =>
      Array.from({ length: hours }, (_, h) =>
        edge === null
          ? fromC + ((toC - fromC) * h) / hours + swingC * Math.sin((2 * Math.PI * (h - 7.5)) / 24)
          : edges[edge % edges.length]!,
      ),
    ),
  );

/** Hours between sowings: mostly a day, as the clocks change an hour more or less, or any. */
const anySteps = fc.array(fc.constantFrom(24, 24, 24, 24, 23, 25, 0, 1, 7, 100), { minLength: 5, maxLength: 40 });
const sownAt = (steps: readonly number[], nHours: number): number[] => {
  const sowH = [0];
  for (let i = 0; sowH.at(-1)! < nHours + 24; i++) sowH.push(sowH.at(-1)! + Math.max(1, steps[i % steps.length]!));
  return sowH;
};

const anyCounting = fc.record({ withinH: fc.integer({ min: 1, max: 1200 }), viablePercent: between(1, 100) });
const anyGaps = fc.array(fc.record({ at: between(0, 1), hours: fc.integer({ min: 1, max: 40 }) }), { maxLength: 2 });

const anyOwnCrop: fc.Arbitrary<Crop> = fc
  .record({
    cells: fc.array(fc.record({ days: fc.integer({ min: 1, max: 40 }), percent: fc.integer({ min: 1, max: 100 }) }), {
      minLength: 2,
      maxLength: 6,
    }),
    coldestC: fc.integer({ min: 0, max: 12 }),
    stepC: fc.integer({ min: 2, max: 8 }),
    endsInNone: fc.boolean(),
    chillingSensitive: fc.boolean(),
  })
  .map(({ cells, coldestC, stepC, endsInNone, chillingSensitive }) => {
    const rows: CustomCrop['rows'][number][] = cells.map((cell, i) => ({
      temperatureC: coldestC + i * stepC,
      ...cell,
    }));
    const none = { temperatureC: coldestC + cells.length * stepC, days: null, percent: 0 };
    return customCrop({ rows: endsInNone ? [...rows, none] : rows, chillingSensitive });
  });

const holds = (crop: fc.Arbitrary<Crop>, numRuns: number): void =>
  fc.assert(
    fc.property(crop, anyLot, anyYear, anySteps, anyCounting, anyGaps, (one, lot, year, steps, counting, gaps) => {
      const seed = seedOf(one, lot);
      const hourlyC = hourlyOf(year, edgesOf(one, seed));
      for (const { at, hours } of gaps) {
        const fromH = Math.floor(at * hourlyC.length);
        hourlyC.fill(NaN, fromH, fromH + hours);
      }
      expect(differencesFromSlow(seed, hourlyC, sownAt(steps, hourlyC.length), counting)).toEqual([]);
    }),
    { seed: SEED, numRuns },
  );

describe('all sowings at once are what each is by itself', () => {
  it.each([...crops.values()].map((crop) => [crop.id, crop] as const))('of %s', (_, crop) => {
    holds(fc.constant(crop), 3);
  });

  it('of rows of one’s own', () => {
    holds(anyOwnCrop, 30);
  });
});

describe('of all sowings', () => {
  const run = (crop: Crop, lot: Parameters<typeof seedOf>[1], year: readonly Weather[], withinH: number) => {
    const seed = seedOf(crop, lot);
    const hourlyC = hourlyOf(year, edgesOf(crop, seed));
    const sowH = sownAt([24], hourlyC.length);
    return { sowH, ...allSowings(seed, hourlyC, sowH, { withinH, viablePercent: 100, shares: [0.3, 0.8] }) };
  };

  it('first, half and most follow one another before the count, and the stands lie within 0 and 100', () => {
    fc.assert(
      fc.property(anyCrop, anyLot, anyYear, fc.integer({ min: 1, max: 1500 }), (crop, lot, year, withinH) => {
        const all = run(crop, lot, year, withinH);
        all.known.forEach((isKnown, i) => {
          expect(Number.isNaN(all.laboratoryPercent[i]!)).toBe(isKnown === 0);
          if (!isKnown) return;
          const [stand, unheld] = [all.laboratoryPercent[i]!, all.ifHeldAreLostPercent[i]!];
          expect([0, unheld, stand, 100]).toEqual([0, unheld, stand, 100].toSorted((a, b) => a - b));
          const [first, half, most] = [all.firstH[i]!, all.halfH[i]!, all.mostH[i]!];
          const times = [0, first, half, most, withinH + HAIR];
          if (all.up[i] === 0) expect([first, half, most]).toEqual([NaN, NaN, NaN]);
          else expect(times).toEqual(times.toSorted((a, b) => a - b));
        });
      }),
      { seed: SEED, numRuns: 40 },
    );
  });

  it('a longer count lowers no stand, and moves no share', () => {
    fc.assert(
      fc.property(anyCrop, anyLot, anyYear, fc.tuple(fc.nat(1200), fc.nat(1200)), (crop, lot, year, counts) => {
        const [short, long] = counts.toSorted((a, b) => a - b).map((withinH) => run(crop, lot, year, withinH));
        short!.known.forEach((isKnown, i) => {
          if (!isKnown || !long!.known[i]) return;
          expect(long!.up[i]).toBeGreaterThanOrEqual(short!.up[i]!);
          expect(long!.upUnheld[i]).toBeGreaterThanOrEqual(short!.upUnheld[i]!);
          short!.sharesH.forEach((hours, k) => {
            if (!Number.isNaN(hours[i]!)) expect(Math.abs(long!.sharesH[k]![i]! - hours[i]!)).toBeLessThan(HAIR);
          });
        });
      }),
      { seed: SEED, numRuns: 40 },
    );
  });

  it('none made later is up sooner', () => {
    fc.assert(
      fc.property(anyCrop, anyLot, anyYear, (crop, lot, year) => {
        const { sowH, sharesH, up } = run(crop, lot, year, 1000);
        for (const hours of sharesH) {
          let latest = 0;
          hours.forEach((hour, i) => {
            if (Number.isNaN(hour)) return;
            expect(sowH[i]! + hour).toBeGreaterThan(latest - HAIR);
            latest = sowH[i]! + hour;
          });
        }
        expect(Math.max(0, ...up)).toBeLessThanOrEqual(COHORTS);
      }),
      { seed: SEED, numRuns: 40 },
    );
  });

  it('of one record after another, none knows of the one before', () => {
    const anyYears = fc.array(fc.tuple(anyYear, anyGaps), { minLength: 2, maxLength: 4 });
    fc.assert(
      fc.property(anyCrop, anyLot, anyYears, anyCounting, (crop, lot, years, counting) => {
        const seed = seedOf(crop, lot);
        const sow = sowingsOf(seed, counting);
        for (const [year, gaps] of years) {
          const hourlyC = hourlyOf(year, edgesOf(crop, seed));
          for (const { at, hours } of gaps) {
            const fromH = Math.floor(at * hourlyC.length);
            hourlyC.fill(NaN, fromH, fromH + hours);
          }
          const sowH = sownAt([24], hourlyC.length);
          expect(sow(hourlyC, sowH)).toEqual(allSowings(seed, hourlyC, sowH, counting));
        }
      }),
      { seed: SEED, numRuns: 40 },
    );
  });
});
