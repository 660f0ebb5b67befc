import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { conduct, hourEdges, hourlyMeans } from '../../../src/seedbed/conduction/conduct.js';
import { DEEP_CM, diffusivityOf, type Ground, gradedDepthsCm, nodeAt } from '../../../src/seedbed/surface/ground.js';

const groundOf = (depthsCm: readonly number[], conductivity = 1.2, heatCapacity = 2e6, bottomCm = DEEP_CM): Ground => ({
  depthsCm: gradedDepthsCm(depthsCm, bottomCm),
  conductivity,
  heatCapacity,
});
const even = (ground: Ground, tempC: number): Float64Array => new Float64Array(ground.depthsCm.length).fill(tempC);

/** Means over each step of a wave of 10 K. */
const waveC = (periodH: number, steps: number, stepH = 1): Float64Array => {
  const turn = (2 * Math.PI * stepH) / periodH;
  return Float64Array.from({ length: steps }, (_, k) => (10 / turn) * (Math.cos(turn * k) - Math.cos(turn * (k + 1))));
};

/** Carslaw and Jaeger (1959), 2.6: the swing and the lag of a wave below a conductance. */
function analytic({ conductivity, ...rest }: Ground, conductance: number, periodH: number, depthCm: number) {
  const turnPerS = (2 * Math.PI) / (periodH * 3600);
  const dampingM = Math.sqrt((2 * diffusivityOf({ conductivity, ...rest })) / turnPerS);
  const resistance = conductivity / (dampingM * conductance);
  const depths = depthCm / 100 / dampingM;
  return {
    swingK: (10 * Math.exp(-depths)) / Math.hypot(1 + resistance, resistance),
    lagH: ((depths + Math.atan2(resistance, 1 + resistance)) * periodH) / (2 * Math.PI),
  };
}

function errorAt5cmK(ground: Ground, conductance: number, periodH: number, stepH = 1): number {
  const periods = periodH > 1000 ? 4 : 40;
  const steps = (periods * periodH) / stepH;
  const top = { conductance: new Float64Array(steps).fill(conductance), tempC: waveC(periodH, steps, stepH) };
  const [edges] = conduct(ground, even(ground, 0), { top }, [nodeAt(ground, 5)], { freezes: false, stepH });
  const { swingK, lagH } = analytic(ground, conductance, periodH, 5);
  let worst = 0;
  for (let step = steps - periodH / stepH; step < steps; step++) {
    const truth = swingK * Math.sin((2 * Math.PI * (step * stepH - lagH)) / periodH);
    worst = Math.max(worst, Math.abs(edges![step]! - truth));
  }
  return worst;
}

describe('conduct', () => {
  const surfaces = [
    ['bare ground', groundOf([5]), 20],
    ['turf', groundOf([5], 1, 2.5e6), 5],
  ] as const;

  it.each(surfaces)('follows a 10 K wave of a day and of a year below %s within 0.02 K at 5 cm', (_, ground, h) => {
    expect(errorAt5cmK(ground, h, 24)).toBeLessThan(0.02);
    expect(errorAt5cmK(ground, h, 8766)).toBeLessThan(0.02);
  });

  it('hardly changes at 5 cm when the step is halved', () => {
    for (const [, ground, h] of surfaces) {
      const steps = 24 * 20;
      const run = (stepH: number): Float64Array => {
        const n = steps / stepH;
        const top = { conductance: new Float64Array(n).fill(h), tempC: waveC(24, n, stepH) };
        return conduct(ground, even(ground, 0), { top }, [nodeAt(ground, 5)], { freezes: false, stepH })[0]!;
      };
      const [whole, half] = [run(1), run(0.5)];
      const change = Math.max(...whole.map((tempC, hour) => Math.abs(tempC - half[2 * hour]!)).slice(24));
      expect(change).toBeLessThan(0.02);
    }
  });

  it('agrees with a known surface as well: a 10 K wave there, within 0.02 K at 5 cm', () => {
    const ground = groundOf([5]);
    const edgesC = hourEdges(waveC(24, 24 * 40));
    const [edges] = conduct(ground, even(ground, 0), { top: { edgesC } }, [nodeAt(ground, 5)], { freezes: false });
    const dampingM = Math.sqrt((diffusivityOf(ground) * 24 * 3600) / Math.PI);
    const depths = 0.05 / dampingM;
    for (let hour = 24 * 39; hour < 24 * 40; hour++) {
      const truth = 10 * Math.exp(-depths) * Math.sin((2 * Math.PI * hour) / 24 - depths);
      expect(Math.abs(edges![hour]! - truth)).toBeLessThan(0.02);
    }
  });

  /** Heat of a body over that at -1 °C frozen through [J m⁻²]; freezing gives off 3e7 J m⁻³ over the last degree. */
  function heatOf({ depthsCm, heatCapacity }: Ground, profileC: Float64Array, freezes: boolean): number {
    const n = profileC.length;
    return profileC.reduce((sum, tempC, i) => {
      const thicknessM = (depthsCm[Math.min(n - 1, i + 1)]! - depthsCm[Math.max(0, i - 1)]!) / 200;
      const latent = freezes ? 3e7 * Math.min(1, Math.max(0, tempC + 1)) : 0;
      return sum + thicknessM * (heatCapacity * tempC + latent);
    }, 0);
  }

  it('conserves heat: what passes the surface, the bottom and the sides is what the soil gains', () => {
    const hours = 24 * 10;
    const ground = groundOf([5], 0.3, 2.1e6, 15);
    const profileC = even(ground, 12);
    const top = { conductance: new Float64Array(hours).fill(20), tempC: waveC(24, hours).map((one) => one + 18) };
    const bottom = {
      conductance: new Float64Array(hours).fill(20),
      tempC: waveC(24, hours).map((one) => one / 2 + 15),
    };
    const last = profileC.length - 1;
    const before = heatOf(ground, profileC, false);
    const all = [...profileC.keys()];
    const edges = conduct(ground, profileC, { top, bottom, sides: { perSecond: 1e-4, tempC: top.tempC } }, all);
    let passed = 0;
    const { depthsCm, heatCapacity } = ground;
    for (let hour = 0; hour < hours; hour++) {
      const mean = (node: number): number => (edges[node]![hour]! + edges[node]![hour + 1]!) / 2;
      passed += 3600 * 20 * (top.tempC[hour]! - mean(0) + bottom.tempC[hour]! - mean(last));
      for (const node of all) {
        const thicknessM = (depthsCm[Math.min(last, node + 1)]! - depthsCm[Math.max(0, node - 1)]!) / 200;
        passed += 3600 * 1e-4 * heatCapacity * thicknessM * (top.tempC[hour]! - mean(node));
      }
    }
    expect(heatOf(ground, profileC, false) - before).toBeCloseTo(passed, 0);
  });

  it.each([
    [-3, 6],
    [0, 6],
    [-1, 4],
  ])('conserves heat through weeks of frost by night and thaw by day, about %s °C', (meanC, swingC) => {
    const hours = 24 * 60;
    const ground = groundOf([5]);
    const profileC = even(ground, 2);
    const tempC = waveC(24, hours).map((one) => (one * swingC) / 10 + meanC);
    const top = { conductance: new Float64Array(hours).fill(20), tempC };
    const before = heatOf(ground, profileC, true);
    const [surface] = conduct(ground, profileC, { top }, [0]);
    let passed = 0;
    for (let hour = 0; hour < hours; hour++) {
      passed += 3600 * 20 * (tempC[hour]! - (surface![hour]! + surface![hour + 1]!) / 2);
    }
    const stored = heatOf(ground, profileC, true) - before;
    // About 0 °C a node at the surface freezes and thaws within hours: a twentieth of a day's heat is left over.
    expect(Math.abs(stored - passed)).toBeLessThan(0.15 * Math.abs(stored));
  });

  it('lets nothing leave the range of what acts on it', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -15, max: 45, noNaN: true }), { minLength: 5, maxLength: 5 }),
        fc.double({ min: 2, max: 25, noNaN: true }),
        fc.double({ min: -5, max: 30, noNaN: true }),
        (levels, conductance, startC) => {
          const ground = groundOf([5]);
          const hours = 24 * levels.length;
          const tempC = Float64Array.from({ length: hours }, (_, hour) => levels[Math.floor(hour / 24)]!);
          const top = { conductance: new Float64Array(hours).fill(conductance), tempC };
          const means = hourlyMeans(conduct(ground, even(ground, startC), { top }, [nodeAt(ground, 5)])[0]!);
          // A jump makes the surface swing about the truth for a few hours; at 5 cm hardly anything of it is left.
          for (const mean of means) {
            expect(mean).toBeGreaterThan(Math.min(startC, ...levels) - 0.3);
            expect(mean).toBeLessThan(Math.max(startC, ...levels) + 0.3);
          }
        },
      ),
      { numRuns: 30, seed: 4 },
    );
  });

  it('stays as it is where all is alike, and changes none of what it is given but the profile', () => {
    const ground = groundOf([5]);
    const profileC = even(ground, 17);
    const top = { conductance: new Float64Array(48).fill(20), tempC: new Float64Array(48).fill(17) };
    const copy = structuredClone(top);
    const [edges] = conduct(ground, profileC, { top }, [nodeAt(ground, 5)]);
    for (const tempC of edges!) expect(tempC).toBeCloseTo(17, 10);
    expect(top).toEqual(copy);
  });
});

describe('hourlyMeans and hourEdges', () => {
  it('give the means of a cubic, and the cubic back at the edges', () => {
    const cubic = (t: number): number => 2 + 0.3 * t - 0.1 * t ** 2 + 0.02 * t ** 3;
    const integral = (t: number): number => 2 * t + 0.15 * t ** 2 - (0.1 * t ** 3) / 3 + (0.02 * t ** 4) / 4;
    const edges = Float64Array.from({ length: 9 }, (_, t) => cubic(t));
    const means = Float64Array.from({ length: 8 }, (_, t) => integral(t + 1) - integral(t));
    const found = hourlyMeans(edges);
    for (let t = 1; t < 7; t++) expect(found[t]).toBeCloseTo(means[t]!, 10);
    const back = hourEdges(means);
    for (let t = 2; t < 7; t++) expect(back[t]).toBeCloseTo(edges[t]!, 10);
  });

  it('serve short records: one hour, and two', () => {
    expect([...hourlyMeans([10, 12])]).toEqual([11]);
    expect([...hourEdges([11])]).toEqual([11, 11]);
    expect([...hourEdges([10, 12])]).toEqual([10, 11, 12]);
  });
});

describe('gradedDepthsCm', () => {
  it('has a node at each depth asked, rising from 0 to the bottom', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 3000 }), { maxLength: 8 }),
        fc.constantFrom(30, 40, DEEP_CM),
        (asked, bottomCm) => {
          const wanted = asked.map((hundredths) => hundredths / 100);
          const depths = gradedDepthsCm(wanted, bottomCm);
          expect(depths[0]).toBe(0);
          expect(depths.at(-1)).toBeGreaterThanOrEqual(bottomCm);
          for (let i = 1; i < depths.length; i++) expect(depths[i]! - depths[i - 1]!).toBeGreaterThan(0.009);
          for (const depth of wanted) expect(depths.indexOf(depth)).toBeGreaterThanOrEqual(0);
        },
      ),
      { numRuns: 200, seed: 4 },
    );
  });
});
