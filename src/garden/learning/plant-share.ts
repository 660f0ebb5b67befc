import { betaCdf } from '../../basics/numerics/beta-cdf.js';
import type { UncertainShare } from '../../basics/numerics/chance-of-count.js';
import { gaussLegendre } from '../../basics/numerics/gauss-legendre.js';
import type { Span } from '../../germination/crop.js';
import { agedShare } from '../../germination/storage/viability.js';

/** A share as a list of shares that it may be, each with its chance. */
interface Possible {
  readonly share: number;
  readonly chance: number;
}

/** What is known of the share of a lot that germinates: its distribution, and the same as a list. */
interface LotShare extends UncertainShare {
  readonly possible: readonly Possible[];
}

const { at, weights } = gaussLegendre(256);
/** A distribution is cut off this far from its middle [standard deviations]. */
const REACH_SD = 9;
/** Within so many standard deviations nearly all of it lies. */
const NEARLY_ALL_SD = 4;

/** A share that is known. */
const knownShare = (share: number): LotShare => ({
  atLeast: (wanted) => (wanted <= share ? 1 : 0),
  corners: [share],
  possible: [{ share, chance: 1 }],
});

/** A share from a count: a beta distribution whose shapes are the counts and a half each, as for Jeffreys' interval. */
function countedShare(sown: number, germinated: number): LotShare {
  const [a, b] = [germinated + 0.5, sown - germinated + 0.5];
  const mean = a / (a + b);
  const sd = Math.sqrt((mean * (1 - mean)) / (a + b + 1));
  return {
    atLeast: (wanted) => 1 - betaCdf(wanted, a, b),
    corners: inside([mean - NEARLY_ALL_SD * sd, mean, mean + NEARLY_ALL_SD * sd]),
    possible: possibleBeta(a, b),
  };
}

/** A beta distribution as shares with chances, by their arc sines, in which it is about evenly wide. */
function possibleBeta(a: number, b: number): Possible[] {
  const middle = Math.asin(Math.sqrt(a / (a + b)));
  const reach = REACH_SD / (2 * Math.sqrt(a + b));
  const from = Math.max(0, middle - reach);
  const half = (Math.min(Math.PI / 2, middle + reach) - from) / 2;
  const logDensity = (angle: number): number =>
    (2 * a - 1) * Math.log(Math.sin(angle)) + (2 * b - 1) * Math.log(Math.cos(angle));
  const angles = at.map((x) => from + half * (1 + x));
  const logs = angles.map(logDensity);
  const highest = Math.max(...logs);
  const heights = logs.map((log, i) => weights[i]! * Math.exp(log - highest));
  const whole = heights.reduce((sum, height) => sum + height, 0);
  return angles.map((angle, i) => ({ share: Math.sin(angle) ** 2, chance: heights[i]! / whole }));
}

/** A share after its time in store, by each of several sets of constants, any of which may be right. */
const agedBy = (share: LotShare, probits: readonly number[]): LotShare => ({
  atLeast: (wanted) => probits.reduce((sum, cost) => sum + share.atLeast(agedShare(wanted, -cost)), 0) / probits.length,
  corners: inside(probits.flatMap((cost) => share.corners.map((corner) => agedShare(corner, cost)))),
  possible: probits.flatMap((cost) =>
    share.possible.map(({ share: one, chance }) => ({ share: agedShare(one, cost), chance: chance / probits.length })),
  ),
});

/** What is told of a lot: a count, or a share; and what its time in store has cost, by each set of constants. */
export interface LotTold {
  readonly germinated: { readonly sown: number; readonly germinated: number } | number;
  readonly probits: readonly number[];
}

/**
 * The share of a lot's seeds that become plants in a bed: what germinates of the lot, times what the bed gives of that.
 *
 * @param lot   A count, which leaves a beta distribution, or a share from 0 to 1 taken as it is; and its ageing.
 * @param field The share of germinating seeds that the bed gives: from 0 to 1, any between the ends alike likely.
 */
export function plantShare({ germinated, probits }: LotTold, field: Span): UncertainShare {
  const fresh =
    typeof germinated === 'number' ? knownShare(germinated) : countedShare(germinated.sown, germinated.germinated);
  const lot = probits.length === 0 ? fresh : agedBy(fresh, probits);
  const { from, to } = field;
  if (from === to) {
    return {
      atLeast: (wanted) => (wanted > from ? 0 : lot.atLeast(wanted / from)),
      corners: lot.corners.map((corner) => corner * from),
    };
  }
  return {
    atLeast: (wanted) =>
      lot.possible.reduce((sum, { share, chance }) => {
        const bed = (to - wanted / share) / (to - from);
        return bed <= 0 ? sum : sum + chance * Math.min(1, bed);
      }, 0),
    corners: lot.corners.flatMap((corner) => [corner * from, corner * to]),
  };
}

const inside = (shares: readonly number[]): number[] => shares.filter((share) => share > 0 && share < 1);
