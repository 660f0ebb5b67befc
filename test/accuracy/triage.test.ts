import { describe, expect, it } from 'vitest';
import { addDays, daysBetween, type PlainDate } from '../../src/basics/calendar.js';
import { normalCdf } from '../../src/basics/numerics/normal-cdf.js';
import { probit } from '../../src/basics/numerics/probit.js';
import { chance } from '../../src/demo/chance.js';
import { countPosterior, SPREADS } from '../../src/garden/learning/count-posterior.js';
import { isOverdue } from '../../src/garden/learning/overdue.js';
import { usualPrior } from '../../src/garden/learning/prior.js';
import { LOST_ODDS } from '../../src/garden/sowing/judgement.js';
import {
  COMES_UP,
  type HarvestOdds,
  isToSowAgain,
  LOOK_AGAIN_DAYS,
  lessDelay,
  RESOWING_COST,
} from '../../src/garden/sowing/triage-rule.js';
import { COHORTS, cohortRun } from '../../src/germination/run/cohorts.js';
import { largestDelayFactors } from '../../src/germination/run/largest-delay-factors.js';
import { countUpBy } from '../../src/germination/run/outcome.js';
import { cropCalled, seedOf } from '../unit/germination/make.js';
import { countedWrong, inventedSoil, trueSowing, waysOf } from './simulated-beds.js';
import { mean, table } from './statistics.js';
import { tell } from './tell.js';

// All rows are invented: no open record of bare rows that were kept, or sown again, was found. What is invented is how often rows
// die, how the living scatter, and the odds of a harvest by date, which fall as a window closes. A new sowing is counted by what it
// gives in the mean, q H(t), less its cost; a row that lives gives what its own date lets expect.

/** When a grower sows a bare row again. */
interface Policy {
  readonly name: string;
  /** @param day Days since the sowing. */
  readonly acts: (lostOdds: number, row: { readonly day: number; readonly harvest: HarvestOdds }) => boolean;
}
const SOWN = '2027-01-01' as PlainDate;
const on = (day: number): PlainDate => addDays(SOWN, day);
const dayOf = (date: PlainDate): number => daysBetween(SOWN, date);

const triage: Policy = {
  name: 'triage',
  acts: (lostOdds, { day, harvest }) => isToSowAgain(lostOdds, harvest, on(day)),
};
const certain = (odds: number): Policy => ({ name: String(odds), acts: (lostOdds) => lostOdds >= odds });
const never: Policy = { name: 'never', acts: () => false };

/** The odds of a harvest by days from a sowing: good until a window begins to close, and gone when it has. */
const closing = (lastDay: number, { good = 0.95, fadesInDays = 3 } = {}): HarvestOdds =>
  lessDelay((date) => good / (1 + Math.exp((dayOf(date) - lastDay) / fadesInDays)), SOWN);

/** What a row keeps of a whole harvest, where it was sown again on a day, or not at all. */
const kept = (isDead: boolean, againOn: number | null, harvest: HarvestOdds): number => {
  const own = isDead ? 0 : harvest(SOWN);
  if (againOn === null) return own;
  return Math.max(own, isDead ? COMES_UP * harvest(on(againOn)) : 0) - RESOWING_COST;
};

/** Works something out when it is first asked for. */
function once(work: () => number): () => number {
  let known: number | null = null;
  return () => (known ??= work());
}

describe('wait, or sow again: rows that are looked at every four days', () => {
  const ROWS = 20_000;
  const DEAD = 0.25;
  /** Standard deviation of the logarithm of the day on which a living row shows, about the middle one. */
  const SHOWS_SD = 0.3;

  /** Half-days are the chart's at the season's soil; the days to the window's last date those of the place's rules. */
  const cases = [
    { name: 'carrot, 1 May', halfDays: 14, lastDay: 92 },
    { name: 'carrot, 15 July', halfDays: 7, lastDay: 17 },
    { name: 'carrot, 26 July, window ends 1 August', halfDays: 7, lastDay: 6 },
    { name: 'snap bean, 30 June, window ends 7 July', halfDays: 6, lastDay: 7 },
    { name: 'leaf lettuce, 8 August', halfDays: 4, lastDay: 18 },
    { name: 'pea, 20 April', halfDays: 13, lastDay: 95 },
  ];
  const policies: readonly Policy[] = [triage, ...[0.95, 0.9, 0.75, 0.5].map(certain), never];

  const results = cases.map(({ name, halfDays, lastDay }, i) => {
    const harvest = closing(lastDay + 4, { fadesInDays: 4 });
    const random = chance(811 + 97 * i);
    for (let k = 0; k < 20; k++) random();
    const lostOn = (day: number): number => {
      const bare = 1 - normalCdf(Math.log(day / halfDays) / SHOWS_SD);
      return DEAD / (DEAD + (1 - DEAD) * bare);
    };
    const sums = policies.map(() => 0);
    const late = { name: '1.5 x half-days', sum: 0 };
    for (let row = 0; row < ROWS; row++) {
      const isDead = random() < DEAD;
      const showsOn = isDead ? Infinity : halfDays * Math.exp(SHOWS_SD * probit(random()));
      const looks: number[] = [];
      for (let day = LOOK_AGAIN_DAYS; day < Math.min(showsOn, 100); day += LOOK_AGAIN_DAYS) looks.push(day);
      policies.forEach(({ acts }, p) => {
        const day = looks.find((one) => acts(lostOn(one), { day: one, harvest })) ?? null;
        sums[p]! += kept(isDead, day, harvest);
      });
      late.sum += kept(isDead, looks.find((day) => day >= 1.5 * halfDays) ?? null, harvest);
    }
    return { name, shares: [...sums, late.sum].map((sum) => sum / ROWS) };
  });

  it('tells what is kept of a whole harvest, case by case', () => {
    tell(
      'triage-cases',
      'Harvest kept, of 1, by when a bare row is sown again (invented rows, 20,000 a case)',
      table(
        ['', ...policies.map(({ name }) => name), '1.5 x half-days'],
        results.map(({ name, shares }) => [name, ...shares.map((share) => share.toFixed(3))]),
      ),
    );
  });

  // Differences under 0.004 are noise of so many rows.
  it.each(results)(
    '$name: triage is no worse than any fixed odds, within the noise',
    ({ shares: [own, ...others] }) => {
      for (const other of others) expect(own).toBeGreaterThan(other! - 0.004);
    },
  );

  it('near the end of a window triage keeps five points more than certainty does', () => {
    const [own, at95] = results[2]!.shares;
    expect(own! - at95!).toBeGreaterThan(0.05);
  });
});

describe('a season of 500 invented rows, judged as the service judges them', () => {
  const ROWS = 500;
  const DEAD = 0.25;
  const WRONG = 0.1;
  const VIABLE = 0.85;
  /** Days on which a row that stands is picked: so long a harvest is lost with it. */
  const crops = ['lettuce', 'carrot', 'radish', 'beet', 'onion', 'snap-bean'].map((id) => {
    const crop = cropCalled(id);
    return { crop, seed: seedOf(crop), harvestDays: crop.pickingDays ?? 14 };
  });

  interface Row {
    readonly isDead: boolean;
    readonly harvest: HarvestOdds;
    readonly harvestDays: number;
    readonly looks: readonly { readonly day: number; readonly isBare: boolean; readonly lostOdds: () => number }[];
    /** The last day on which most of it might be up. */
    readonly rangesEnd: number;
  }

  function seasonOfRows(seed: number): Row[] {
    const random = chance(seed);
    for (let k = 0; k < 20; k++) random();
    const rows: Row[] = [];
    const soils = crops.flatMap(({ crop, seed: own }, i) =>
      [0, 1, 2].map((n) => {
        const hourlyC = inventedSoil(seed + 31 * i + n, 150, crop.soil!.optimumFromC + 2 * n, 0.03 - 0.03 * n);
        return { ways: waysOf(own, hourlyC), hourlyC };
      }),
    );
    while (rows.length < ROWS) {
      const pick = Math.floor(random() * crops.length);
      const { crop, seed: own, harvestDays } = crops[pick]!;
      const { ways, hourlyC } = soils[3 * pick + Math.floor(random() * 3)]!;
      const isDead = random() < DEAD;
      const { bedTimeFactor, field, sigmaLog10 } = crop;
      const truth = trueSowing(ways, random, {
        timeFactor: bedTimeFactor.from + random() * (1.15 * bedTimeFactor.to - bedTimeFactor.from),
        standFactor: isDead ? 0 : field.from + random() * (field.to - field.from),
        seeds: 200,
        viable: VIABLE,
        sigmaLog10,
      });
      if (!isDead && !Number.isFinite(truth.halfH)) continue;
      const dayOfShare = (share: number, timeFactor: number): number => {
        const run = cohortRun({ ...own, timeFactor }, hourlyC);
        return run.upAtH[Math.ceil(share * countUpBy(run, hourlyC.length)) - 1]! / 24;
      };
      // From then on the service says what to do; before, nothing is due.
      const dueDay = dayOfShare(0.1, bedTimeFactor.from);
      const rangesEnd = Math.ceil(dayOfShare(0.9, bedTimeFactor.to));
      // A season's sowings, some of them shortly before its window closes.
      const harvest = closing(Math.floor(random() * 80), { fadesInDays: 2 + 6 * random() });
      const days: number[] = [];
      for (let day = LOOK_AGAIN_DAYS; day <= Math.min(140, 2.5 * rangesEnd); day += LOOK_AGAIN_DAYS) days.push(day);
      const reaches = SPREADS.map(({ times }) =>
        largestDelayFactors(
          { ...own, sigmaLog10: own.sigmaLog10 * times },
          hourlyC,
          days.map((day) => 24 * day),
        ),
      );
      const counts = days.map((day) => {
        const right = truth.standingAt(24 * day);
        const seedlings = random() < WRONG ? countedWrong(right, truth.seeds, random) : right;
        return { seedlings, ofSeeds: truth.seeds, isAtLeast: false };
      });
      const belief = usualPrior(crop);
      const looks = days.map((day, k) => ({
        day,
        isBare: counts[k]!.seedlings === 0,
        lostOdds: once(() => {
          const seen = {
            counts: counts.slice(0, k + 1),
            reaches: reaches.map((reach) => reach.subarray(0, (k + 1) * COHORTS)),
            viable: VIABLE,
          };
          const { dead } = countPosterior(belief, seen);
          // As the service does: called lost only where it is overdue.
          return isOverdue(seen, crop) ? dead : Math.min(dead, LOST_ODDS - 1e-9);
        }),
      }));
      rows.push({ isDead, harvest, harvestDays, rangesEnd, looks: looks.filter(({ day }) => day >= dueDay) });
    }
    return rows;
  }

  const againAt = (row: Row, acts: (look: Row['looks'][number]) => boolean): number | null =>
    row.looks.find((look) => look.isBare && acts(look))?.day ?? null;
  const policies = [
    {
      name: 'triage',
      on: (row: Row) => againAt(row, ({ day, lostOdds }) => triage.acts(lostOdds(), { day, harvest: row.harvest })),
    },
    { name: 'at 95 in 100', on: (row: Row) => againAt(row, ({ lostOdds }) => lostOdds() >= LOST_ODDS) },
    { name: 'at the range’s end', on: (row: Row) => againAt(row, ({ day }) => day >= row.rangesEnd) },
    { name: 'never', on: () => null },
  ] as const;

  const seeds = [2027, 4054, 6081];
  const seasons = seeds.map((seed) => {
    const rows = seasonOfRows(seed);
    return policies.map(({ name, on: againOn }) => {
      const chosen = rows.map((row) => ({ row, day: againOn(row) }));
      const lostDays = chosen.reduce(
        (sum, { row, day }) => sum + row.harvestDays * (row.harvest(SOWN) - kept(row.isDead, day, row.harvest)),
        0,
      );
      return {
        name,
        lostDays,
        again: chosen.filter(({ day }) => day !== null).length,
        needless: chosen.filter(({ row, day }) => day !== null && !row.isDead).length,
      };
    });
  });

  it('tells the days of harvest that are lost', () => {
    tell(
      'triage-season',
      'A season of 500 invented rows, a quarter of them dead, a tenth of the counts wrong: days of harvest lost',
      table(
        ['', 'seed', 'days lost', 'sown again', 'of these alive'],
        seasons.flatMap((season, i) =>
          season.map(({ name, lostDays, again, needless }) => [
            name,
            String(seeds[i]),
            lostDays.toFixed(0),
            String(again),
            String(needless),
          ]),
        ),
      ),
    );
    expect(mean(seasons.map(([own]) => own!.again))).toBeGreaterThan(0);
  });

  it.each(seeds.map((seed, i) => [seed, i] as const))(
    'seed %i: triage loses fewer than waiting for 95 in 100, and than always sowing again at the range’s end',
    (_, i) => {
      const [own, at95, atEnd, atNone] = seasons[i]!;
      expect(own!.lostDays).toBeLessThan(at95!.lostDays);
      expect(own!.lostDays).toBeLessThan(atEnd!.lostDays);
      expect(own!.lostDays).toBeLessThan(atNone!.lostDays);
    },
  );
});
