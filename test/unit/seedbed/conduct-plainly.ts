import type { Boundary } from '../../../src/seedbed/conduction/conduct.js';
import {
  frozenCapacityShare,
  meetApparentHeatCapacity,
  updateEnthalpy,
} from '../../../src/seedbed/conduction/phase-change.js';
import type { Ground } from '../../../src/seedbed/surface/ground.js';

const ATTEMPTS = 4;
const HALF_STEP_ATTEMPTS = 8;
const OVERSHOOT_K = 2;
const HOUR_S = 3600;

/** `conduct` as plainly as it can be written: every node eliminated downward and solved again in every attempt. */
export function conductPlainly(
  ground: Ground,
  profileC: Float64Array,
  { top, bottom, sides }: Boundary,
  nodes: readonly number[],
  { freezes = true, stepH = 1 }: { readonly freezes?: boolean; readonly stepH?: number } = {},
): Float64Array[] {
  const n = profileC.length;
  const known = 'edgesC' in top ? top.edgesC : null;
  const air = 'edgesC' in top ? null : top;
  const hours = known ? known.length - 1 : air!.tempC.length;
  if (known) profileC[0] = known[0]!;
  const stepS = stepH * HOUR_S;
  const links = linksOf(ground, stepS);
  const side = sides ? (stepS / 2) * sides.perSecond : 0;
  const share = new Float64Array(n).fill(1);
  const matrix = blankMatrix(n);
  const next = new Float64Array(n);
  const told = nodes.map(() => new Float64Array(hours + 1));
  nodes.forEach((node, i) => {
    told[i]![0] = profileC[node]!;
  });
  const frostShare = frozenCapacityShare(ground.heatCapacity);
  let [topLink, bottomLink] = [NaN, NaN];
  let isFresh = false;
  let coldestC = Math.min(...profileC);
  let wasFreezing = false;

  for (let hour = 0; hour < hours; hour++) {
    const topNow = air ? links.perTopConductance * air.conductance[hour]! : 0;
    const bottomNow = bottom ? links.perBottomConductance * bottom.conductance[hour]! : 0;
    if (topNow !== topLink || bottomNow !== bottomLink) isFresh = false;
    [topLink, bottomLink] = [topNow, bottomNow];
    const topC = air ? air.tempC[hour]! : 0;
    const bottomC = bottom ? bottom.tempC[hour]! : 0;
    const sideC = sides ? sides.tempC[hour]! : 0;
    const mayThaw = freezes && coldestC < 0;
    let isFreezing = wasFreezing || mayThaw;
    const outside = { topC, bottomC, sideC, surfaceC: known ? known[hour + 1]! : NaN };
    for (let attempt = 0; ; attempt++) {
      if (!isFresh) eliminate(matrix, links, share, { topLink, bottomLink, side, isKnown: known !== null });
      isFresh = true;
      coldestC = step(matrix, profileC, next, outside);
      isFreezing ||= freezes && coldestC < 0;
      if (!isFreezing || attempt === ATTEMPTS || meetApparentHeatCapacity(profileC, next, share, frostShare, n - 1) < 0)
        break;
      isFresh = false;
    }
    wasFreezing = freezes && (mayThaw || coldestC < 0);
    if (wasFreezing) {
      updateEnthalpy(profileC, next, share, frostShare);
      const isKnown = known !== null;
      const aboutC = [...profileC, isKnown ? outside.surfaceC : topC, bottomC, sideC];
      const [lowC, highC] = [Math.min(...aboutC) - OVERSHOOT_K, Math.max(...aboutC) + OVERSHOOT_K];
      if (next.subarray(1).some((tempC) => tempC < lowC || tempC > highC)) {
        // Two implicit half steps, each the middle of a whole one.
        const from = profileC.slice();
        for (const half of [0, 1]) {
          const endC = half === 0 ? outside.surfaceC : 2 * outside.surfaceC - from[0]!;
          for (let attempt = 0; attempt < HALF_STEP_ATTEMPTS; attempt++) {
            eliminate(matrix, links, share, { topLink, bottomLink, side, isKnown });
            step(matrix, from, next, { ...outside, surfaceC: endC });
            next.forEach((tempC, i) => {
              next[i] = (from[i]! + tempC) / 2;
            });
            if (meetApparentHeatCapacity(from, next, share, frostShare, n - 1) < 0) break;
          }
          updateEnthalpy(from, next, share, frostShare);
          from.set(next);
        }
        coldestC = Math.min(...next);
        isFresh = false;
      }
    }
    if (!wasFreezing && share.some((one) => one !== 1)) {
      share.fill(1);
      isFresh = false;
    }
    profileC.set(next);
    for (let i = 0; i < nodes.length; i++) told[i]![hour + 1] = profileC[nodes[i]!]!;
  }
  return told;
}

/** What half a step lets pass between neighbours, per kelvin of difference and with nothing freezing. */
interface Links {
  readonly up: Float64Array;
  readonly down: Float64Array;
  readonly perTopConductance: number;
  readonly perBottomConductance: number;
}

function linksOf({ depthsCm, conductivity, heatCapacity }: Ground, stepS: number): Links {
  const n = depthsCm.length;
  const up = new Float64Array(n);
  const down = new Float64Array(n);
  const half = stepS / 2 / heatCapacity;
  const thicknessM = (i: number): number => (depthsCm[Math.min(n - 1, i + 1)]! - depthsCm[Math.max(0, i - 1)]!) / 200;
  for (let i = 0; i < n; i++) {
    if (i > 0) up[i] = (half * conductivity) / (((depthsCm[i]! - depthsCm[i - 1]!) / 100) * thicknessM(i));
    if (i < n - 1) down[i] = (half * conductivity) / (((depthsCm[i + 1]! - depthsCm[i]!) / 100) * thicknessM(i));
  }
  return { up, down, perTopConductance: half / thicknessM(0), perBottomConductance: half / thicknessM(n - 1) };
}

/** One step's equations: what passes between neighbours at each node's own pace, and the elimination downward. */
interface Matrix {
  readonly up: Float64Array;
  readonly down: Float64Array;
  readonly side: Float64Array;
  readonly eliminated: Float64Array;
  readonly inverse: Float64Array;
  topLink: number;
  bottomLink: number;
}

const blankMatrix = (n: number): Matrix => ({
  up: new Float64Array(n),
  down: new Float64Array(n),
  side: new Float64Array(n),
  eliminated: new Float64Array(n),
  inverse: new Float64Array(n),
  topLink: 0,
  bottomLink: 0,
});

/** Sets the equations up, and eliminates downward; done once for as long as they stay the same. */
function eliminate(
  matrix: Matrix,
  links: Links,
  share: Float64Array,
  { topLink, bottomLink, side, isKnown }: { topLink: number; bottomLink: number; side: number; isKnown: boolean },
): void {
  const { up, down, eliminated, inverse } = matrix;
  const n = share.length;
  matrix.topLink = share[0]! * topLink;
  matrix.bottomLink = share[n - 1]! * bottomLink;
  for (let i = 0; i < n; i++) {
    const own = share[i]!;
    up[i] = own * links.up[i]!;
    down[i] = own * links.down[i]!;
    matrix.side[i] = own * side;
    const outward =
      up[i]! + down[i]! + matrix.side[i]! + (i === 0 ? matrix.topLink : 0) + (i === n - 1 ? matrix.bottomLink : 0);
    inverse[i] = 1 / (1 + outward - (i === 0 ? 0 : up[i]! * eliminated[i - 1]!));
    eliminated[i] = down[i]! * inverse[i]!;
    if (i === 0 && isKnown) {
      eliminated[0] = 0;
      inverse[0] = 1;
    }
  }
}

/** One step from a profile to the next; gives the coldest temperature of it [°C]. */
function step(
  { up, down, side, eliminated, inverse, topLink, bottomLink }: Matrix,
  fromC: Float64Array,
  toC: Float64Array,
  { topC, bottomC, sideC, surfaceC }: { topC: number; bottomC: number; sideC: number; surfaceC: number },
): number {
  const n = fromC.length;
  let temp = fromC[0]!;
  let below = fromC[1]!;
  const atTop = temp + down[0]! * (below - temp) + topLink * (2 * topC - temp) + side[0]! * (2 * sideC - temp);
  let solved = Number.isNaN(surfaceC) ? atTop * inverse[0]! : surfaceC;
  toC[0] = solved;
  for (let i = 1; i < n - 1; i++) {
    const above = temp;
    temp = below;
    below = fromC[i + 1]!;
    const right = temp + up[i]! * (above - temp + solved) + down[i]! * (below - temp) + side[i]! * (2 * sideC - temp);
    solved = right * inverse[i]!;
    toC[i] = solved;
  }
  const last = n - 1;
  const atBottom =
    below +
    up[last]! * (temp - below + solved) +
    bottomLink * (2 * bottomC - below) +
    side[last]! * (2 * sideC - below);
  solved = atBottom * inverse[last]!;
  toC[last] = solved;
  let coldestC = solved;
  for (let i = n - 2; i >= 0; i--) {
    solved = toC[i]! + eliminated[i]! * solved;
    toC[i] = solved;
    if (solved < coldestC) coldestC = solved;
  }
  return coldestC;
}
