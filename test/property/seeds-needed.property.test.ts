import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type LotTold, plantShare } from '../../src/garden/learning/plant-share.js';
import { fewestSeeds, MAX_SEEDS } from '../../src/garden/lots/fewest-seeds.js';
import type { Span } from '../../src/germination/crop.js';

const anyTest = fc
  .tuple(fc.integer({ min: 2, max: 400 }), fc.double({ min: 0.2, max: 1, noNaN: true }))
  .map(([sown, share]) => ({ sown, germinated: Math.max(1, Math.round(share * sown)) }));
const anyProbits = fc.array(fc.double({ min: 0, max: 1.5, noNaN: true }), { maxLength: 2 });
const anyLot: fc.Arbitrary<LotTold> = fc.record({
  germinated: fc.oneof(anyTest, fc.double({ min: 0.2, max: 1, noNaN: true })),
  probits: anyProbits,
});
const anyField: fc.Arbitrary<Span> = fc
  .tuple(fc.integer({ min: 5, max: 100 }), fc.integer({ min: 5, max: 100 }))
  .map(([one, other]) => ({ from: Math.min(one, other) / 100, to: Math.max(one, other) / 100 }));
const anyPlants = fc.oneof(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 100_000 }));
const anySureness = fc.double({ min: 0.05, max: 0.99, noNaN: true });

/** The number of seeds, where more than can be sown is more than any. */
const seeds = (plants: number, sureness: number, lot: LotTold, field: Span): number =>
  fewestSeeds(plants, sureness, plantShare(lot, field))?.seeds ?? MAX_SEEDS + 1;

const RUNS = { numRuns: 25 };

describe('the seeds that are needed', () => {
  it('are never fewer for more plants', () => {
    fc.assert(
      fc.property(
        anyPlants,
        fc.integer({ min: 1, max: 500 }),
        anySureness,
        anyLot,
        anyField,
        (plants, more, ...rest) => {
          expect(seeds(plants + more, ...rest)).toBeGreaterThanOrEqual(seeds(plants, ...rest));
        },
      ),
      RUNS,
    );
  });

  it('are never fewer for more sureness', () => {
    fc.assert(
      fc.property(anyPlants, anySureness, anySureness, anyLot, anyField, (plants, one, other, ...rest) => {
        const [less, more] = [Math.min(one, other), Math.max(one, other)];
        expect(seeds(plants, more, ...rest)).toBeGreaterThanOrEqual(seeds(plants, less, ...rest));
      }),
      RUNS,
    );
  });

  it('are never fewer of a lot of which fewer germinated, or of one that is older', () => {
    fc.assert(
      fc.property(anyPlants, anySureness, anyTest, anyProbits, anyField, (plants, sureness, test, probits, field) => {
        const poorer = { ...test, germinated: test.germinated - 1 };
        const needed = seeds(plants, sureness, { germinated: test, probits }, field);
        expect(seeds(plants, sureness, { germinated: poorer, probits }, field)).toBeGreaterThanOrEqual(needed);
        const older = probits.map((cost) => cost + 0.3);
        expect(seeds(plants, sureness, { germinated: test, probits: older }, field)).toBeGreaterThanOrEqual(needed);
      }),
      RUNS,
    );
  });

  it('are never fewer in a bed that gives less', () => {
    fc.assert(
      fc.property(anyPlants, anySureness, anyLot, anyField, (plants, sureness, lot, field) => {
        const poorer = { from: 0.8 * field.from, to: 0.9 * field.to };
        expect(seeds(plants, sureness, lot, poorer)).toBeGreaterThanOrEqual(seeds(plants, sureness, lot, field));
      }),
      RUNS,
    );
  });

  it('are at least the plants, and give a range that holds them at a sureness of 90 %', () => {
    fc.assert(
      fc.property(anyPlants, anyLot, anyField, (plants, lot, field) => {
        const needed = fewestSeeds(plants, 0.9, plantShare(lot, field));
        if (!needed) return;
        expect(needed.seeds).toBeGreaterThanOrEqual(plants);
        expect(needed.plants.from).toBeGreaterThanOrEqual(plants);
        expect(needed.plants.to).toBeGreaterThanOrEqual(needed.plants.from);
        expect(needed.plants.to).toBeLessThanOrEqual(needed.seeds);
      }),
      RUNS,
    );
  });

  it('are none where nothing comes', () => {
    for (const [share, field] of [
      [0, { from: 0.5, to: 0.9 }],
      [0.9, { from: 0, to: 0 }],
    ] as const) {
      expect(fewestSeeds(1, 0.5, plantShare({ germinated: share, probits: [] }, field))).toBeNull();
      expect(fewestSeeds(1, 0.5, plantShare({ germinated: share, probits: [0.5, 1] }, field))).toBeNull();
    }
  });
});
