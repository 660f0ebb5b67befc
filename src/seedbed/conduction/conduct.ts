import { neverStop, type ShouldStop, stopIf } from '../../basics/stop.js';
import type { Ground } from '../surface/ground.js';
import { dampFrostStep, overshoots } from './damped-step.js';
import { frozenCapacityShare, meetApparentHeatCapacity, updateEnthalpy } from './phase-change.js';
import { type Equations, eliminate, equationsOf, type Outside, sweepDown, sweepUp } from './soil-equations.js';

/** Hourly heat exchange of the soil with its surroundings. */
export interface Exchange {
  /** Heat transfer coefficient [W m⁻² K⁻¹], for each hour. Shape (n). */
  readonly conductance: ArrayLike<number>;
  /** Mean temperature of the surroundings, for each hour [°C]. Shape (n). */
  readonly tempC: ArrayLike<number>;
}

/** A surface whose temperature is known [°C] at the edges of the hours. Shape (n + 1). */
export interface KnownSurface {
  readonly edgesC: ArrayLike<number>;
}

/** Boundary conditions of a body of soil. */
export interface Boundary {
  /** At the surface: the sol-air temperature through the surface's conductance, or the readings of a probe there. */
  readonly top: Exchange | KnownSurface;
  /** Without it no heat passes below. */
  readonly bottom?: Exchange;
  /**
   * Through the sides of a pot: the rate of approach to the outside's temperature [1/s], and that temperature [°C],
   * shape (n).
   */
  readonly sides?: { readonly perSecond: number; readonly tempC: ArrayLike<number> };
}

/** Maximum iterations of a phase-change step. */
const ATTEMPTS = 4;
/** Nodes at least this warm before a step and after its first solution are skipped in its iterations [°C]. */
const NEAR_FROST_C = 2;
const HOUR_S = 3600;
/** A year of hours: some milliseconds. */
const STOP_EVERY_STEPS = 8760;

/**
 * Heat conduction downward through a body of soil, hour by hour.
 *
 * @param ground   The nodes and their material.
 * @param profileC Temperature of each node at the start [°C]; overwritten with that of the last hour. Shape (nodes).
 * @param boundary Boundary conditions; means of each hour. Shape (n).
 * @param nodes    Nodes whose temperatures are returned.
 * @param options  `freezes`: soil water freezes and thaws (default true). `stepH`: length of a step when it is not an
 * hour; "hour" here then means "step".
 * @param shouldStop Called once a year of hours.
 * @returns For each of the nodes, its temperature at the edges of the hours [°C]. Shape (n + 1) each.
 *
 * Formula: C dT/dt = d/dz(λ dT/dz); at the top -λ dT/dz = h (F - T0); between nodes by Crank-Nicolson over control
 * volumes, α = 2κ/(m(m + p)), γ = 2κ/(p(m + p)), m and p the distances up and down; one tridiagonal solve a step
 * (`soil-equations`), repeated in frost only as deep as frost may reach. The hour's mean stands for the middle of the
 * step, so that heat is conserved. The apparent heat capacity is 3e7 J m⁻³ K⁻¹ higher between -1 and 0 °C. A
 * phase-change step is solved again with each node's apparent capacity, and an enthalpy update then sets each node's
 * temperature from the heat it gained. A node without frost always has its own capacity.
 * Accuracy: a 10 K wave of a day or a year at 5 cm within 0.02 K of the analytic answer. Sixty days of frost by night
 * and thaw by day, by the hour, within 0.05 K at 5 cm of steps of some minutes. Jumps of the surroundings make the
 * surface oscillate about the truth from edge to edge; the hours' means (`hourlyMeans`) are free of it.
 * Cost: about 0.3 µs an hour for the 50 nodes of open ground, three times that while some are freezing.
 * Source: Crank, Nicolson (1947); Carslaw, Jaeger (1959). Conduction of Heat in Solids, 2.6.
 */
export function conduct(
  ground: Ground,
  profileC: Float64Array,
  { top, bottom, sides }: Boundary,
  nodes: readonly number[],
  { freezes = true, stepH = 1 }: { readonly freezes?: boolean; readonly stepH?: number } = {},
  shouldStop: ShouldStop = neverStop,
): Float64Array[] {
  const n = profileC.length;
  const known = 'edgesC' in top ? top.edgesC : null;
  const air = 'edgesC' in top ? null : top;
  const hours = known ? known.length - 1 : air!.tempC.length;
  if (known) profileC[0] = known[0]!;
  const stepS = stepH * HOUR_S;
  const equations = equationsOf(ground, stepS, sides ? sides.perSecond : 0);
  const frost = frostOf(ground);
  const outside: Outside = { topC: 0, bottomC: 0, sideC: 0, surfaceC: NaN };
  const next = new Float64Array(n);
  const edgesC = nodes.map(() => new Float64Array(hours + 1));
  nodes.forEach((node, i) => {
    edgesC[i]![0] = profileC[node]!;
  });
  // Deepest node of the part to eliminate again.
  let staleTo = n - 1;
  let coldestC = Math.min(...profileC);
  let wasFreezing = false;

  for (let hour = 0; hour < hours; hour++) {
    if (hour % STOP_EVERY_STEPS === 0) stopIf(shouldStop);
    const topLink = air ? equations.perTopConductance * air.conductance[hour]! : 0;
    const bottomLink = bottom ? equations.perBottomConductance * bottom.conductance[hour]! : 0;
    if (topLink !== equations.topLink) staleTo = Math.max(0, staleTo);
    if (bottomLink !== equations.bottomLink) staleTo = n - 1;
    equations.topLink = topLink;
    equations.bottomLink = bottomLink;
    if (air) outside.topC = air.tempC[hour]!;
    if (bottom) outside.bottomC = bottom.tempC[hour]!;
    if (sides) outside.sideC = sides.tempC[hour]!;
    if (known) outside.surfaceC = (profileC[0]! + known[hour + 1]!) / 2;
    const mayThaw = freezes && coldestC < 0;
    eliminate(equations, frost.share, staleTo);
    staleTo = -1;
    sweepUp(equations, profileC, n - 1, outside);
    coldestC = sweepDown(equations, profileC, next, 0, n - 1, outside);
    if (freezes && (wasFreezing || mayThaw || coldestC < 0)) {
      coldestC = stepInFrost(equations, frost, profileC, next, outside);
      wasFreezing = mayThaw || coldestC < 0;
      if (wasFreezing) {
        updateEnthalpy(profileC, next, frost.share, frost.frostShare);
        if (overshoots(profileC, next, outside)) {
          dampFrostStep(equations, frost, profileC, next, { ...outside, surfaceEndC: known ? known[hour + 1]! : NaN });
          coldestC = Math.min(...next);
          staleTo = n - 1;
        }
      } else {
        frost.share.fill(1);
        staleTo = n - 1;
      }
    }
    profileC.set(next);
    for (let i = 0; i < nodes.length; i++) edgesC[i]![hour + 1] = profileC[nodes[i]!]!;
  }
  return edgesC;
}

/** State of the phase change between steps. */
export interface Frost {
  /** Each node's capacity without freezing over its last apparent capacity. Shape (nodes). */
  readonly share: Float64Array;
  readonly frostShare: number;
}

const frostOf = ({ depthsCm, heatCapacity }: Ground): Frost => ({
  share: new Float64Array(depthsCm.length).fill(1),
  frostShare: frozenCapacityShare(heatCapacity),
});

/**
 * Solves a phase-change step again until the nodes' apparent capacities agree with those it was solved with. The first
 * guess is the apparent capacity of the step before.
 *
 * @param toC The first solution; overwritten with the last one.
 * @returns Its coldest temperature [°C].
 */
function stepInFrost(
  equations: Equations,
  { share, frostShare }: Frost,
  fromC: Float64Array,
  toC: Float64Array,
  outside: Outside,
): number {
  const last = fromC.length - 1;
  let reach = last;
  while (reach > 0 && Math.min(fromC[reach]!, toC[reach]!) >= NEAR_FROST_C && share[reach] === 1) reach--;
  for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
    const changedTo = meetApparentHeatCapacity(fromC, toC, share, frostShare, reach);
    if (changedTo < 0) break;
    eliminate(equations, share, changedTo);
    sweepUp(equations, fromC, changedTo, outside);
    sweepDown(equations, fromC, toC, 0, reach, outside);
  }
  if (reach < last) sweepDown(equations, fromC, toC, reach + 1, last, outside);
  let coldestC = Infinity;
  for (let i = 0; i <= last; i++) if (toC[i]! < coldestC) coldestC = toC[i]!;
  return coldestC;
}

/**
 * Means of the hours from the temperatures at their edges.
 *
 * @param edgesC Temperatures an hour apart [°C]. Shape (n + 1), n >= 1.
 * @returns Means [°C]. Shape (n).
 *
 * Formula: the mean of the two edges; with another edge on both sides (-e₋₁ + 13 e₀ + 13 e₁ - e₂)/24, the mean of the
 * cubic through the four.
 * @example hourlyMeans([0, 1, 4, 9]) // => [0.5, 2.3333, 6.5]
 */
export function hourlyMeans(edgesC: ArrayLike<number>): Float64Array {
  const n = edgesC.length - 1;
  const means = new Float64Array(n);
  for (let hour = 0; hour < n; hour++) {
    const [from, to] = [edgesC[hour]!, edgesC[hour + 1]!];
    const inside = hour > 0 && hour < n - 1;
    means[hour] = inside ? (13 * (from + to) - edgesC[hour - 1]! - edgesC[hour + 2]!) / 24 : (from + to) / 2;
  }
  return means;
}

/**
 * Temperatures at the edges of hours from the hours' means: the inverse of `hourlyMeans`.
 *
 * @param meansC Means of hours in a row [°C]. Shape (n), n >= 1.
 * @returns Temperatures at the edges [°C]. Shape (n + 1).
 *
 * Formula: (-m₋₂ + 7 m₋₁ + 7 m₀ - m₁)/12, of the cubic whose means are the four hours'; at the ends the nearest mean,
 * and one hour from them the middle of two.
 * @example hourEdges([1, 2, 3, 4]) // => [1, 1.5, 2.5, 3.5, 4]
 */
export function hourEdges(meansC: ArrayLike<number>): Float64Array {
  const n = meansC.length;
  return Float64Array.from({ length: n + 1 }, (_, edge) => {
    const [before, after] = [meansC[Math.max(0, edge - 1)]!, meansC[Math.min(n - 1, edge)]!];
    if (edge < 2 || edge > n - 2) return (before + after) / 2;
    return (7 * (before + after) - meansC[edge - 2]! - meansC[edge + 1]!) / 12;
  });
}
