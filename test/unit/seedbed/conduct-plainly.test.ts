import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Boundary, conduct } from '../../../src/seedbed/conduction/conduct.js';
import { DEEP_CM, type Ground, gradedDepthsCm, nodeAt } from '../../../src/seedbed/surface/ground.js';
import { conductPlainly } from './conduct-plainly.js';

const DEPTHS_CM = [0, 0.6, 2.5, 5];
const HOURS = 24 * 60;

/** Weather by the hour: weeks about a level, days, and nights. */
const weatherC = (levelC: number, swingK: number, odd: number): Float64Array =>
  Float64Array.from(
    { length: HOURS },
    (_, hour) =>
      levelC +
      6 * Math.sin(hour / 190 + odd) +
      3 * Math.sin(hour / 37 + 2 * odd) +
      swingK * Math.sin((2 * Math.PI * (hour - 8)) / 24),
  );

function furthestApartK(ground: Ground, startC: number, boundary: Boundary): number {
  const nodes = DEPTHS_CM.map((depth) => nodeAt(ground, depth));
  const [fast, plain] = [conduct, conductPlainly].map((run) => {
    const profileC = Float64Array.from(ground.depthsCm, (depth) => startC + (depth * (10 - startC)) / (depth + 100));
    return [...run(ground, profileC, boundary, nodes), profileC];
  });
  const apart = fast!.flatMap((values, i) => Array.from(values, (tempC, at) => Math.abs(tempC - plain![i]![at]!)));
  return Math.max(...apart);
}

const anyWeather = fc.record({
  levelC: fc.double({ min: -8, max: 20, noNaN: true }),
  swingK: fc.double({ min: 0, max: 10, noNaN: true }),
  odd: fc.double({ min: 0, max: 6, noNaN: true }),
  startC: fc.double({ min: -4, max: 12, noNaN: true }),
});

describe('conduct, beside the same equations solved plainly', () => {
  it('gives the same soil in open ground, through frost and thaw, snow and none', () => {
    const ground = { depthsCm: gradedDepthsCm(DEPTHS_CM, DEEP_CM), conductivity: 1.2, heatCapacity: 2e6 };
    fc.assert(
      fc.property(anyWeather, ({ levelC, swingK, odd, startC }) => {
        const tempC = weatherC(levelC, swingK, odd);
        const conductance = tempC.map((_, hour) => (Math.floor(hour / 100) % 3 === 0 ? 2.5 : 20));
        expect(furthestApartK(ground, startC, { top: { conductance, tempC } })).toBeLessThan(1e-9);
      }),
      { numRuns: 25 },
    );
  });

  it('gives the same soil in a pot that freezes through', () => {
    const ground = { depthsCm: gradedDepthsCm(DEPTHS_CM, 15), conductivity: 0.3, heatCapacity: 2.1e6 };
    fc.assert(
      fc.property(anyWeather, ({ levelC, swingK, odd, startC }) => {
        const tempC = weatherC(levelC, swingK, odd);
        const all = { conductance: new Float64Array(HOURS).fill(20), tempC };
        const boundary = { top: all, bottom: all, sides: { perSecond: 5e-5, tempC } };
        expect(furthestApartK(ground, startC, boundary)).toBeLessThan(1e-9);
      }),
      { numRuns: 25 },
    );
  });

  it('gives the same soil below a surface whose temperature is known', () => {
    const ground = { depthsCm: gradedDepthsCm(DEPTHS_CM, DEEP_CM), conductivity: 1, heatCapacity: 2.5e6 };
    fc.assert(
      fc.property(anyWeather, ({ levelC, swingK, odd, startC }) => {
        const top = { edgesC: weatherC(levelC, swingK, odd) };
        expect(furthestApartK(ground, startC, { top })).toBeLessThan(1e-9);
      }),
      { numRuns: 15 },
    );
  });
});
