import type { Ground } from '../surface/ground.js';

/** Temperatures of the soil's surroundings in one step [°C]. */
export interface Outside {
  topC: number;
  bottomC: number;
  sideC: number;
  /** Mean surface temperature over the step; NaN when it is unknown. */
  surfaceC: number;
}

/**
 * The equations of one conduction step, eliminated from the bottom upward. The deep part stays the same for years and
 * is eliminated once; frost near the surface changes only the nodes above its depth.
 *
 * Formula: Crank-Nicolson, (1 + A) T' = (1 - A) T + 2 s, is (1 + A) m = T + s with m the middle of T and T', so
 * T' = 2 m - T. Row i of A: half a step's exchange with the neighbours and the outside, times the node's share of its
 * capacity without freezing; s: heat from the outside.
 */
export interface Equations {
  /** Without freezing. Shape (nodes). */
  readonly up: Float64Array;
  readonly down: Float64Array;
  readonly side: number;
  readonly perTopConductance: number;
  readonly perBottomConductance: number;
  /** Values of the current step. */
  topLink: number;
  bottomLink: number;
  /** After the elimination: g = weight T + fromSide sideC + fromBelow g₊₁; m = g + fromAbove m₋₁. Shape (nodes). */
  readonly weight: Float64Array;
  readonly fromSide: Float64Array;
  readonly fromBelow: Float64Array;
  readonly fromAbove: Float64Array;
  fromTop: number;
  fromBottom: number;
  /** g of the current step. Shape (nodes). */
  readonly swept: Float64Array;
}

/** @param sidesPerSecond Rate at which a pot approaches the outside's temperature through its sides [1/s]. */
export function equationsOf(
  { depthsCm, conductivity, heatCapacity }: Ground,
  stepS: number,
  sidesPerSecond: number,
): Equations {
  const n = depthsCm.length;
  const up = new Float64Array(n);
  const down = new Float64Array(n);
  const half = stepS / 2 / heatCapacity;
  const thicknessM = (i: number): number => (depthsCm[Math.min(n - 1, i + 1)]! - depthsCm[Math.max(0, i - 1)]!) / 200;
  for (let i = 0; i < n; i++) {
    if (i > 0) up[i] = (half * conductivity) / (((depthsCm[i]! - depthsCm[i - 1]!) / 100) * thicknessM(i));
    if (i < n - 1) down[i] = (half * conductivity) / (((depthsCm[i + 1]! - depthsCm[i]!) / 100) * thicknessM(i));
  }
  return {
    up,
    down,
    side: (stepS / 2) * sidesPerSecond,
    perTopConductance: half / thicknessM(0),
    perBottomConductance: half / thicknessM(n - 1),
    topLink: NaN,
    bottomLink: NaN,
    weight: new Float64Array(n),
    fromSide: new Float64Array(n),
    fromBelow: new Float64Array(n),
    fromAbove: new Float64Array(n),
    fromTop: 0,
    fromBottom: 0,
    swept: new Float64Array(n),
  };
}

/** Eliminates from a node upward, with each node's capacity share. The nodes below must be eliminated already. */
export function eliminate(equations: Equations, share: Float64Array, fromNode: number): void {
  const { up, down, side, topLink, bottomLink, weight, fromSide, fromBelow, fromAbove } = equations;
  const last = up.length - 1;
  for (let i = fromNode; i >= 0; i--) {
    const own = share[i]!;
    const [upward, downward, sideward] = [own * up[i]!, own * down[i]!, own * side];
    let outward = upward + downward + sideward;
    if (i === 0) outward += own * topLink;
    if (i === last) outward += own * bottomLink;
    const inverse = 1 / (1 + outward - (i < last ? downward * fromAbove[i + 1]! : 0));
    weight[i] = inverse;
    fromSide[i] = sideward * inverse;
    fromBelow[i] = downward * inverse;
    fromAbove[i] = upward * inverse;
    if (i === 0) equations.fromTop = own * topLink * inverse;
    if (i === last) equations.fromBottom = own * bottomLink * inverse;
  }
}

/** Eliminates the right sides from a node upward. The nodes below must hold the current step already. */
export function sweepUp(
  { weight, fromSide, fromBelow, fromTop, fromBottom, swept }: Equations,
  fromC: Float64Array,
  fromNode: number,
  { topC, bottomC, sideC }: Outside,
): void {
  const last = fromC.length - 1;
  let below = fromNode < last ? swept[fromNode + 1]! : 0;
  for (let i = fromNode; i >= 0; i--) {
    below = weight[i]! * fromC[i]! + fromSide[i]! * sideC + fromBelow[i]! * below;
    if (i === last) below += fromBottom * bottomC;
    swept[i] = below;
  }
  swept[0]! += fromTop * topC;
}

/**
 * Solves the temperatures after the step from a node down to another, and returns the coldest [°C]. The nodes above
 * must be solved already.
 */
export function sweepDown(
  { fromAbove, swept }: Equations,
  fromC: Float64Array,
  toC: Float64Array,
  fromNode: number,
  toNode: number,
  { surfaceC }: Outside,
): number {
  let first = fromNode;
  let coldestC = Infinity;
  let middleC = fromNode > 0 ? (fromC[fromNode - 1]! + toC[fromNode - 1]!) / 2 : 0;
  if (fromNode === 0 && !Number.isNaN(surfaceC)) {
    middleC = surfaceC;
    coldestC = 2 * middleC - fromC[0]!;
    toC[0] = coldestC;
    first = 1;
  }
  for (let i = first; i <= toNode; i++) {
    middleC = swept[i]! + fromAbove[i]! * middleC;
    const tempC = 2 * middleC - fromC[i]!;
    toC[i] = tempC;
    if (tempC < coldestC) coldestC = tempC;
  }
  return coldestC;
}
