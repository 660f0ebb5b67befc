import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dampFrostStep, overshoots } from '../../../src/seedbed/conduction/damped-step.js';
import { frozenCapacityShare } from '../../../src/seedbed/conduction/phase-change.js';
import { equationsOf } from '../../../src/seedbed/conduction/soil-equations.js';
import { DEEP_CM, gradedDepthsCm } from '../../../src/seedbed/surface/ground.js';

const ground = { depthsCm: gradedDepthsCm([0, 1.3, 5], DEEP_CM), conductivity: 1.6, heatCapacity: 2.6e6 };
const nNodes = ground.depthsCm.length;
const profile = fc.array(fc.double({ min: -40, max: 40, noNaN: true }), { minLength: nNodes, maxLength: nNodes });

describe('a phase-change step that is damped', () => {
  it('leaves no node outside the range of the soil and its surroundings, however rough the soil: the law of conduction', () => {
    fc.assert(
      fc.property(profile, fc.double({ min: -30, max: 40, noNaN: true }), (values, topC) => {
        const fromC = Float64Array.from(values);
        const toC = new Float64Array(nNodes);
        const equations = equationsOf(ground, 3600, 0);
        equations.topLink = equations.perTopConductance * 20;
        equations.bottomLink = 0;
        const share = new Float64Array(nNodes).fill(1);
        const outside = { topC, bottomC: 0, sideC: 0, surfaceC: NaN, surfaceEndC: NaN };
        dampFrostStep(equations, { share, frostShare: frozenCapacityShare(ground.heatCapacity) }, fromC, toC, outside);
        // Capacities that do not quite agree leave some tenths.
        expect(Math.min(...toC)).toBeGreaterThan(Math.min(topC, ...fromC) - 0.5);
        expect(Math.max(...toC)).toBeLessThan(Math.max(topC, ...fromC) + 0.5);
      }),
      { numRuns: 100 },
    );
  });

  it('is asked for where soil below the surface is over 2 K outside that range, and not before', () => {
    const outside = { topC: 10, bottomC: 0, sideC: 0, surfaceC: NaN };
    const fromC = new Float64Array(nNodes).fill(-1);
    const toC = (node: number, tempC: number) => fromC.map((was, i) => (i === node ? tempC : was));
    expect(overshoots(fromC, toC(3, 12.1), outside)).toBe(true);
    expect(overshoots(fromC, toC(3, 11.9), outside)).toBe(false);
    expect(overshoots(fromC, toC(3, -3.1), outside)).toBe(true);
    expect(overshoots(fromC, toC(3, -2.9), outside)).toBe(false);
    expect(overshoots(fromC, toC(0, 20), outside)).toBe(false);
  });
});
