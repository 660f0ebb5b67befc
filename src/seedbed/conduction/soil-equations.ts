import type { Ground } from '../surface/ground.js';

/** What acts on a body of soil in one step: temperatures of its surroundings [°C]. */
export interface Outside {
  topC: number;
  bottomC: number;
  sideC: number;
  /** The middle of the surface's temperature over the step, where it is known; NaN: it is not. */
  surfaceC: number;
}

/**
 * The equations of one step of conduction, eliminated from the bottom upward: the deep part, which stays the same for
 * years, is done once, and frost near the surface touches only what lies above it.
 *
 * Formula: Crank-Nicolson, (1 + A) T' = (1 - A) T + 2 s, is (1 + A) m = T + s with m the middle of T and T', so
 * T' = 2 m - T. Row i of A: what half a step lets pass to the neighbours and the outside, at the node's own share of the
 * usual pace; s: what comes from the outside.
 */
export interface Equations {
  /** With nothing freezing. Shape (nodes). */
  readonly up: Float64Array;
  readonly down: Float64Array;
  readonly side: number;
  readonly perTopConductance: number;
  readonly perBottomConductance: number;
  /** Of the step. */
  topLink: number;
  bottomLink: number;
  /** After the elimination: g = weight T + fromSide sideC + fromBelow g₊₁; m = g + fromAbove m₋₁. Shape (nodes). */
  readonly weight: Float64Array;
  readonly fromSide: Float64Array;
  readonly fromBelow: Float64Array;
  readonly fromAbove: Float64Array;
  fromTop: number;
  fromBottom: number;
  /** g of the step. Shape (nodes). */
  readonly swept: Float64Array;
}

/**
 * @param sidesPerSecond How fast a pot takes the outside's temperature through its sides [1/s].
 */
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

/** Eliminates from a node upward, each node at its share of the usual pace; what lies below it must be done already. */
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

/** The right sides, eliminated from a node upward; those below it must be the step's already. */
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

/** Temperatures after the step, from a node down to another; those above must be solved already. Gives the coldest [°C]. */
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
