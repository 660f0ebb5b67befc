import { meetApparentHeatCapacity, updateEnthalpy } from './phase-change.js';
import { type Equations, eliminate, type Outside, sweepDown, sweepUp } from './soil-equations.js';

/** Soil below the surface may leave the range of its surroundings by this much before the step is damped [K]. Our choice. */
const MAX_OVERSHOOT_K = 2;
/** Iterations of each half step, until its capacities agree. */
const ATTEMPTS = 8;

/**
 * Whether a step took soil below the surface out of the range of what surrounds it, which heat conduction never does.
 *
 * Crank-Nicolson leaves the shortest waves undamped, and the phase change can feed them from step to step.
 *
 * @param fromC   Temperatures before the step [°C]. Shape (nodes).
 * @param toC     Temperatures after it [°C]. Shape (nodes).
 * @param outside The surroundings; a side or bottom of 0 °C that does not exist only widens the range in frost.
 */
export function overshoots(fromC: Float64Array, toC: Float64Array, outside: Outside): boolean {
  const { topC, bottomC, sideC, surfaceC } = outside;
  const isKnown = !Number.isNaN(surfaceC);
  // The surface's mean over the step lies half-way to its end.
  const endC = isKnown ? 2 * surfaceC - fromC[0]! : topC;
  let lowC = Math.min(endC, bottomC, sideC);
  let highC = Math.max(endC, bottomC, sideC);
  for (let i = 0; i < fromC.length; i++) {
    if (fromC[i]! < lowC) lowC = fromC[i]!;
    if (fromC[i]! > highC) highC = fromC[i]!;
  }
  for (let i = 1; i < toC.length; i++) {
    if (toC[i]! < lowC - MAX_OVERSHOOT_K || toC[i]! > highC + MAX_OVERSHOOT_K) return true;
  }
  return false;
}

/**
 * Takes a phase-change step as two implicit half steps, which damp every wave.
 *
 * @param equations The step's equations; left eliminated with the capacities of the second half.
 * @param frost     Each node's capacity share, updated; and the share of a node in which all of its range freezes.
 * @param fromC     Temperatures before the step [°C]. Shape (nodes).
 * @param toC       Overwritten with the temperatures after it [°C]. Shape (nodes).
 * @param outside   The surroundings, and the surface's temperature at the end of the step; NaN when it is unknown.
 *
 * Formula: (1 + A) m = T + s is an implicit step of half the length (see `Equations`), taken twice; amplitudes shrink by
 * 1/(1 + a)² where Crank-Nicolson has (1 - a)/(1 + a).
 * Source: Rannacher (1984), Numerische Mathematik 43: 309-327, on implicit half steps that smooth Crank-Nicolson; from memory.
 * Validity: first order in time, so `conduct` takes it only where its own step overshoots.
 */
export function dampFrostStep(
  equations: Equations,
  { share, frostShare }: { readonly share: Float64Array; readonly frostShare: number },
  fromC: Float64Array,
  toC: Float64Array,
  outside: Outside & { readonly surfaceEndC: number },
): void {
  const last = fromC.length - 1;
  const startC = fromC.slice();
  for (const surfaceC of [outside.surfaceC, outside.surfaceEndC]) {
    for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
      eliminate(equations, share, last);
      sweepUp(equations, startC, last, outside);
      sweepDown(equations, startC, toC, 0, last, { ...outside, surfaceC });
      for (let i = 0; i <= last; i++) toC[i] = (startC[i]! + toC[i]!) / 2;
      if (meetApparentHeatCapacity(startC, toC, share, frostShare, last) < 0) break;
    }
    updateEnthalpy(startC, toC, share, frostShare);
    startC.set(toC);
  }
}
