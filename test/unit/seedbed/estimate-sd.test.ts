import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { probit } from '../../../src/basics/numerics/probit.js';
import { emergencePlusMinusK, plusMinusK } from '../../../src/seedbed/surface/estimate-sd.js';
import { residualsWithRain } from '../../../src/seedbed/surface/residual-model.js';

const model = residualsWithRain(0);

describe('plusMinusK', () => {
  it('is where a normal distribution leaves a tenth on either side', () => {
    expect(plusMinusK(1)).toBeCloseTo(probit(0.9), 2);
    expect(plusMinusK(0)).toBe(0);
  });
});

describe('emergencePlusMinusK', () => {
  it('is the day’s own range for a wait as short as the fast errors last', () => {
    expect([...emergencePlusMinusK(model, [1.2, 1.5], 4.4)]).toEqual([1.28 * 1.2, 1.28 * 1.5]);
    expect([...emergencePlusMinusK(model, [1.2, 1.5], 1)]).toEqual([1.28 * 1.2, 1.28 * 1.5]);
  });

  it('after nine days leaves out half of the fast errors and the noise, by hand', () => {
    // v 1.44, w 1, L 8.8: 1.44 - 0.80 (1 - 4.4/8.8) = 1.04
    expect(emergencePlusMinusK(model, [1.2], 8.8)[0]).toBeCloseTo(1.28 * Math.sqrt(1.04), 12);
  });

  it('narrows with the wait, never below what 0.02 K² leaves, never beyond the day’s own', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 3, noNaN: true }),
        fc.double({ min: 0.5, max: 200, noNaN: true }),
        fc.double({ min: 1, max: 5, noNaN: true }),
        (sd, wait, factor) => {
          const [sooner, later] = [wait, wait * factor].map((days) => emergencePlusMinusK(model, [sd], days)[0]!);
          expect(later).toBeLessThanOrEqual(sooner!);
          expect(later).toBeGreaterThanOrEqual(1.28 * Math.sqrt(0.02));
          expect(sooner).toBeLessThanOrEqual(plusMinusK(sd) + 1e-12);
        },
      ),
    );
  });
});
