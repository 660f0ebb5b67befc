import type { PlainDate } from '../../src/basics/calendar.js';
import { betaCdf } from '../../src/basics/numerics/beta-cdf.js';
import { betaQuantile } from '../../src/basics/numerics/beta-quantile.js';
import { chanceOfCount } from '../../src/basics/numerics/chance-of-count.js';
import { plantShare } from '../../src/garden/learning/plant-share.js';
import { fewestSeeds } from '../../src/garden/lots/fewest-seeds.js';
import { lotNow } from '../../src/garden/lots/lot-now.js';
import { sowAgainAbove } from '../../src/garden/sowing/triage-rule.js';
import type { Span } from '../../src/germination/crop.js';
import { crops } from '../../src/germination/crops.js';
import { agedShare, daysPerProbit } from '../../src/germination/storage/viability.js';
import { lotOf } from '../unit/garden/lots.js';
import type { Runners } from './out.js';

interface Test {
  readonly sown: number;
  readonly germinated: number;
}
interface Wanted {
  readonly plants: number;
  readonly sureness: number;
}
interface Stored {
  readonly crop: string;
  readonly moisturePercent: number;
  readonly storeC: number;
}

const onPaper: Span = { from: 1, to: 1 };
const TESTED_ON = '2024-03-01' as PlainDate;

/** By the crop's first set of constants. */
const perProbit = ({ crop, moisturePercent, storeC }: Stored): number =>
  daysPerProbit(crops.get(crop)!.viability[0]!, moisturePercent, storeC);

/** Seed in store, seed counted, seed to sow, and when to sow again. */
export const lotRunners: Runners = {
  'basics/beta-cdf': ({ x, a, b }: { x: number; a: number; b: number }) => betaCdf(x, a, b),
  'basics/beta-quantile': ({ p, a, b }: { p: number; a: number; b: number }) => betaQuantile(p, a, b),
  'basics/chance-of-count: beta': ({ k, n, a, b }: { k: number; n: number; a: number; b: number }) => {
    const mean = a / (a + b);
    const sd = Math.sqrt((mean * (1 - mean)) / (a + b + 1));
    const corners = [mean - 4 * sd, mean + 4 * sd].filter((share) => share > 0 && share < 1);
    return chanceOfCount(k, n, { atLeast: (share) => 1 - betaCdf(share, a, b), corners });
  },
  'basics/chance-of-count: known': ({ k, n, p }: { k: number; n: number; p: number }) =>
    chanceOfCount(k, n, { atLeast: (share) => (share <= p ? 1 : 0), corners: [p] }),

  'germination/viability daysPerProbit': perProbit,
  'germination/viability agedShare': (given: Stored & { percent: number; days: number }) =>
    100 * agedShare(given.percent / 100, given.days / perProbit(given)),
  'garden/lot-now: percent after a year': ({ percent, ...stored }: Stored & { percent: number }) => {
    const lot = lotOf({ ...stored, germinationPercent: percent, testedOn: TESTED_ON });
    return lotNow(lot, '2025-03-01' as PlainDate).aged[0]!.percent;
  },
  'garden/lot-now: range of a test': (test: Test) => ({ ...lotNow(lotOf({ test }), TESTED_ON).range! }),

  'garden/fewest-seeds: of a test, in a tray that loses none': ({ plants, sureness, ...test }: Wanted & Test) =>
    fewestSeeds(plants, sureness, plantShare({ germinated: test, probits: [] }, onPaper))!.seeds,
  'garden/fewest-seeds: in beds': (given: Wanted & { field: Span } & (Test | { percent: number })) => {
    const germinated = 'percent' in given ? given.percent / 100 : given;
    const needed = fewestSeeds(given.plants, given.sureness, plantShare({ germinated, probits: [] }, given.field))!;
    return { seeds: needed.seeds, ...needed.plants };
  },

  'garden/triage-rule sowAgainAbove': (given: { cost: number; lossByWaiting: number }) =>
    sowAgainAbove(given.lossByWaiting, given.cost),
};
