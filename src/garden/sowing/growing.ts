import { type FindPast, pastSoil } from '../../answers/ahead/past-soil.js';
import { type Forecast, forecast } from '../../answers/forecast/forecast.js';
import { seedRecord } from '../../answers/forecast/record/seed-temperature.js';
import { seedOf, viablePercentOf } from '../../answers/forecast/seed-of.js';
import { type Learned, type Question, seedDepthCm } from '../../answers/question.js';
import { addDays, HOUR_MS, instantAt, type PlainDate } from '../../basics/calendar.js';
import { RequestError } from '../../basics/errors.js';
import { neverStop, type ShouldStop, stopIf } from '../../basics/stop.js';
import { largestDelayFactors } from '../../germination/run/largest-delay-factors.js';
import { countPosterior, type Posterior, type SeenSowing, SPREADS } from '../learning/count-posterior.js';
import { learnedOf } from '../learning/learned.js';
import { likelihoodAsGaussian } from '../learning/likelihood-as-gaussian.js';
import { isOverdue, isOverdueBy } from '../learning/overdue.js';
import { oddsOfStands, oddsOfTimes } from '../learning/posterior-factors.js';
import { type Lesson, type Prior, priorAfter, usualPrior } from '../learning/prior.js';
import { withSoilUncertainty } from '../learning/soil-uncertainty.js';
import { standCounted } from '../learning/stand-counted.js';
import { talliesOf } from '../learning/tally.js';
import type { Count } from '../store/season-store.js';
import { LOOK_AGAIN_DAYS } from './triage-rule.js';

/** A sowing with its counts, as what was learned of a bed needs it. */
export interface Grown extends Pick<Question, 'sowing' | 'lot'> {
  /** The lot's id. */
  readonly lotId: string | null;
  readonly counts: readonly Count[];
}

/** A sowing in a kept bed: the question of its forecast, its counts, and the bed's other sowings of the crop. */
export interface GrowingQuestion extends Question {
  readonly lotId: string | null;
  readonly counts: readonly Count[];
  readonly others: readonly Grown[];
}

/** What a sowing does, by the bed's temperatures and by what was counted in it. */
export interface Growing {
  readonly forecast: Forecast;
  readonly learned: Learned | null;
  /** Posterior of this sowing's own counts; null without counts. */
  readonly posterior: Posterior | null;
  /** True if even in a slow bed of the crop most seedlings would have been up by the last count. */
  readonly isOverdue: boolean;
  /** The odds at each later look that the row is lost, if it is still bare; empty after a count that was not bare. */
  readonly lostIfBare: readonly LostIfBare[];
}

export interface LostIfBare {
  readonly date: PlainDate;
  readonly odds: number;
}

/** Assumed number of seeds in a count of a sowing whose number is unknown: few, so that an empty row proves little. */
const SEEDS_UNSAID = 50;

/** What a sowing does, with what its counts and the bed's earlier ones have taught. */
export function growing(
  question: GrowingQuestion,
  findPast: FindPast = pastSoil,
  shouldStop: ShouldStop = neverStop,
): Growing {
  const { crop, sowing, lotId, counts, others } = question;
  const usual = withSoilUncertainty(usualPrior(crop), question);
  const lessons = others.flatMap((other) => {
    stopIf(shouldStop);
    return lessonOf(question, other, usual);
  });
  const belief = priorAfter(usual, lessons, { date: sowing.date, lot: lotId });
  const seen = counts.length > 0 ? seenOf(question, question) : null;
  const posterior = seen && countPosterior(belief, seen);
  const lostIfBare = counts.at(-1)?.seedlings === 0 ? lostIfStillBare(question, belief, shouldStop) : [];
  const learned = learnedOf({ crop, counts, lessons: lessons.length, usual, belief, posterior });
  const foretold = forecast({ ...question, learned }, findPast, shouldStop);
  return {
    forecast: { ...foretold, stand: standCounted(foretold.stand, counts, sowing.seeds) },
    learned,
    posterior,
    isOverdue: seen !== null && isOverdue(seen, crop),
    lostIfBare,
  };
}

/** Number of looks ahead for which a bare row is followed: at least three weeks. */
const MAX_LOOKS = 6;
/** From these odds on nothing more is learned by looking. */
const CERTAIN_ODDS = 0.99;

/** The odds that a row which is bare now is lost, look by look, should it stay bare. */
function lostIfStillBare(question: GrowingQuestion, prior: Prior, shouldStop: ShouldStop): LostIfBare[] {
  const { sowing, lot, lotId, counts } = question;
  const told: LostIfBare[] = [];
  const looks: Count[] = [];
  for (let n = 1; n <= MAX_LOOKS; n++) {
    const date = addDays(counts.at(-1)!.date, n * LOOK_AGAIN_DAYS);
    looks.push({ date, seedlings: 0, ofSeeds: null, thinned: false });
    // Only what is known of the row now, and that it stays bare, bears on it.
    stopIf(shouldStop);
    const seen = seenOf(question, { sowing, lot, lotId, counts: [...counts, ...looks] });
    if (!seen) break;
    const odds = countPosterior(prior, seen).dead;
    told.push({ date, odds });
    if (odds >= CERTAIN_ODDS) break;
  }
  return told;
}

/** The lesson of another sowing of the bed; empty where its temperatures are unknown. */
function lessonOf(question: GrowingQuestion, other: Grown, usual: Prior): Lesson[] {
  try {
    const seen = seenOf(question, other);
    if (!seen) return [];
    const posterior = countPosterior(usual, seen);
    // A sowing that is more likely dead teaches nothing about live ones.
    if (posterior.dead > 0.5) return [];
    return [
      {
        date: other.sowing.date,
        lot: other.lotId,
        logTime: likelihoodAsGaussian(usual.logTime, posterior.logTime, oddsOfTimes(posterior)),
        logitStand: likelihoodAsGaussian(usual.logitStand, posterior.logitStand, oddsOfStands(posterior)),
      },
    ];
  } catch (error) {
    if (error instanceof RequestError) return [];
    throw error;
  }
}

/** Maximum counts used of one sowing: more add nothing, and cost time. */
const MAX_COUNTS = 60;

/** Some of a list, evenly spread, the last among them. */
const spreadOver = <T>(list: readonly T[], most: number): readonly T[] =>
  list.length <= most
    ? list
    : Array.from({ length: most }, (_, i) => list[Math.round(((i + 1) * list.length) / most) - 1]!);

/**
 * A sowing's counts, beside how far its seed can have come by each; null where none says anything. A count after a long gap
 * in the temperatures counts only where most of the sowing should have been up before it.
 */
function seenOf(question: Question, { sowing, lot, counts }: Grown): SeenSowing | null {
  const { site, series, bed, crop } = question;
  const tallies = spreadOver(talliesOf(counts), MAX_COUNTS);
  const imbibitionMs = instantAt(sowing.date, sowing.time, site.zone);
  const atH = tallies.map(({ date }) => Math.max(0, (instantAt(date, '12:00', site.zone) - imbibitionMs) / HOUR_MS));
  const lastH = Math.ceil(atH.at(-1)!);
  const seed = seedOf({ ...question, lot, timeFactor: null, learned: null });
  const bedding = { site, bed, depthCm: seedDepthCm({ crop, sowing }) };
  const beyond = site.latitude === null ? 'repeat-last-week' : 'seasonal-drift';
  const record = seedRecord(series, bedding, imbibitionMs, beyond, { longestH: lastH + 1, neededH: 0 });
  const hourlyC = record.upTo(lastH).hourlyC.subarray(record.imbibitionH);
  const reachesAt = (hours: readonly number[]): Float64Array[] =>
    SPREADS.map(({ times }) =>
      largestDelayFactors({ ...seed, sigmaLog10: seed.sigmaLog10 * times }, hourlyC, [...hours]),
    );
  const seenUpTo = (n: number): SeenSowing => ({
    counts: tallies.slice(0, n).map(({ came, ofSeeds, isAtLeast }) => ({
      seedlings: came,
      ofSeeds: ofSeeds ?? sowing.seeds ?? SEEDS_UNSAID,
      isAtLeast,
    })),
    reaches: reachesAt(atH.slice(0, n)),
    viable: viablePercentOf({ lot }, seed) / 100,
  });
  const gapH = record.longGap(lastH)?.fromH ?? Infinity;
  const isUpBeforeGap = gapH > 0 && gapH < lastH && isOverdueBy(reachesAt([gapH]), 0, crop);
  const known = isUpBeforeGap ? tallies.length : atH.filter((hour) => hour <= gapH).length;
  return known === 0 ? null : seenUpTo(known);
}
