import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ensembleOf } from '../../../src/answers/ahead/ensemble.js';
import { cohortRun } from '../../../src/germination/run/cohorts.js';
import { outcomeAt } from '../../../src/germination/run/outcome.js';
import { cropCalled, seedOf } from '../germination/make.js';
import { ensembleSlowly } from './ensemble-slowly.js';

const seed = seedOf(cropCalled('onion'));
const HOURS = 60 * 24;
const soil = (meanC: number, swingK = 5): Float64Array =>
  Float64Array.from({ length: HOURS }, (_, hour) => meanC + swingK * Math.sin((2 * Math.PI * (hour - 9)) / 24));
const none = new Float64Array(HOURS);

describe('a sowing in many possible soils', () => {
  it('comes up as in one of them where all are alike and nothing is doubted', () => {
    const { middle, span } = ensembleOf(seed, [soil(14), soil(14), soil(14)], none)!;
    const alone = cohortRun(seed, soil(14));
    expect([...middle.upAtH]).toEqual([...alone.upAtH].map((upAtH) => expect.closeTo(upAtH, 6)));
    const { halfH } = outcomeAt(middle, HOURS, 100);
    expect(span(halfH!).toH - span(halfH!).fromH).toBeLessThan(1e-6);
  });

  it('comes up between the coldest and the warmest, and its range is wider for more doubt', () => {
    const members = Array.from({ length: 20 }, (_, i) => soil(10 + 0.4 * i));
    const [sure, unsure] = [0, 2].map(
      (uncertaintyK) =>
        ensembleOf(
          seed,
          members,
          none.map(() => uncertaintyK),
        )!,
    );
    const halfH = outcomeAt(sure!.middle, HOURS, 100).halfH!;
    const [earliest, latest] = [17.6, 10].map((meanC) => outcomeAt(cohortRun(seed, soil(meanC)), HOURS, 100).halfH!);
    expect(halfH).toBeGreaterThan(earliest!);
    expect(halfH).toBeLessThan(latest!);
    const width = (of: typeof sure): number => of!.span(halfH).toH - of!.span(halfH).fromH;
    expect(width(unsure)).toBeGreaterThan(width(sure));
  });

  it('has no end of its range where over a tenth of the soils let it wait past the count', () => {
    const { middle, span } = ensembleOf(seed, [soil(14), soil(14), soil(14), soil(14), soil(0, 1)], none)!;
    expect(span(outcomeAt(middle, HOURS, 100).halfH!).toH).toBe(Infinity);
  });

  it('leaves out what is not known to the end, and is nothing without the rest', () => {
    const holed = soil(14).fill(NaN, 500, 510);
    expect(ensembleOf(seed, [holed], none)).toBeNull();
    expect(ensembleOf(seed, [holed, soil(14)], none)).not.toBeNull();
  });

  it('is never later for one more warm soil below the optimum', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 8, max: 18, noNaN: true }), { minLength: 3, maxLength: 9 }), (means) => {
        const members = means.map((meanC) => soil(meanC, 3));
        const warmer = members.map((member) => member.map((tempC) => tempC + 1));
        const [asIs, warm] = [members, warmer].map((all) => outcomeAt(ensembleOf(seed, all, none)!.middle, HOURS, 100));
        expect(warm!.halfH ?? Infinity).toBeLessThanOrEqual((asIs!.halfH ?? Infinity) + 1e-6);
      }),
      { numRuns: 30 },
    );
  });
});

describe('the ensemble, beside each of its members worked out alone', () => {
  it.each(['onion', 'lettuce', 'sweet-corn'])('is the same for %s, through heat and cold', (name) => {
    const own = seedOf(cropCalled(name));
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 2, max: 36, noNaN: true }), { minLength: 1, maxLength: 12 }),
        fc.double({ min: 0, max: 14, noNaN: true }),
        fc.double({ min: 0, max: 4, noNaN: true }),
        (levels, swingK, uncertaintyK) => {
          const members = levels.map((level) => soil(level, swingK));
          const doubt = none.map((_, hour) => uncertaintyK * (1 + Math.sin(hour / 50) / 2));
          const [fast, slow] = [ensembleOf, ensembleSlowly].map((run) => run(own, members, doubt, 0.75)!);
          // The doubt's share is multiplied in another order: the last bit of a temperature.
          for (const name of ['upAtH', 'heatInducedAtH'] as const) {
            expect([...fast!.middle[name]]).toEqual(
              [...slow!.middle[name]].map((hours) => (Number.isFinite(hours) ? expect.closeTo(hours, 6) : hours)),
            );
          }
          expect(fast!.middle.killedAtH).toBe(slow!.middle.killedAtH);
          expect(fast!.middle.coldLoss).toBeCloseTo(slow!.middle.coldLoss, 9);
          expect(fast!.middle.everWarmEnough).toBe(slow!.middle.everWarmEnough);
          const at = outcomeAt(slow!.middle, HOURS, 100).halfH ?? HOURS;
          const [ours, plain] = [fast!.span(at + 1e-3), slow!.span(at + 1e-3)];
          for (const end of ['fromH', 'toH'] as const) {
            if (Number.isFinite(plain[end])) expect(ours[end]).toBeCloseTo(plain[end], 6);
            else expect(ours[end]).toBe(plain[end]);
          }
        },
      ),
      { numRuns: 30 },
    );
  });
});
