import { dateAt, HOUR_MS } from '../../basics/calendar.js';
import type { Span } from '../../germination/crop.js';
import { rateAt } from '../../germination/curve/curve.js';
import { type CohortRun, cohortRun } from '../../germination/run/cohorts.js';
import { type Outcome, outcomeAt } from '../../germination/run/outcome.js';
import { ensembleOf, uncertaintyShare } from '../ahead/ensemble.js';
import type { Middle, Question } from '../question.js';
import { soilRanges, soilUncertaintyK } from '../soil/soil-range.js';
import { assumedRanges, type Event, ensembleRanges, type Ranges, withLearned } from './event-ranges.js';
import { type Milestone, milestoneOf, type NoMilestone, slowerBy } from './milestones.js';
import type { SeedRecord } from './record/seed-temperature.js';
import type { Sown } from './sown.js';

/** The course of a sowing's emergence. */
export interface Emergence {
  /** The run of the answer: of the middle year where past years follow the last value, else `ownRun`. */
  readonly run: CohortRun;
  readonly outcome: Outcome;
  /** The run through the one series of temperatures that the answer shows. */
  readonly ownRun: CohortRun;
  readonly ownOutcome: Outcome;
  /** The hours since wetting as in each past year; none without past years. */
  readonly members: readonly Float64Array[];
  readonly dates: Readonly<Record<Event, Milestone | NoMilestone>>;
}

/**
 * When a sowing comes up, and between which dates.
 *
 * @throws {RequestError} `gap-too-long` where a gap hides what the soil did before most came up.
 */
export function emergenceOf(sown: Sown): Emergence {
  const { question, seed, viablePercent, record, beyond, period } = sown;
  const { countedC, progress, sdK } = sown.hours;
  const { countH, imbibitionMs, waitH } = period;
  const ownRun = cohortRun(seed, countedC, progress);
  const ownOutcome = outcomeAt(ownRun, countH, viablePercent);
  refuseGapBeforeMost(record, ownOutcome, countH);
  const residuals = record.soil.model?.surface.residuals ?? null;
  const members = record.members(countedC.length);
  const ensemble = record.ahead
    ? ensembleOf(
        seed,
        members,
        soilUncertaintyK(residuals, sdK, ownOutcome.halfH ?? countH),
        uncertaintyShare(record.soil.probes.length > 0),
      )
    : null;
  const run = ensemble?.middle ?? ownRun;
  const outcome = ensemble ? outcomeAt(run, countH, viablePercent) : ownOutcome;
  const knownH = record.knownToH - record.imbibitionH;
  const weather = ensemble
    ? ensembleRanges(ensemble, outcome)
    : assumedRanges({ knownH, beyond }, outcome, soilRanges(seed, countedC, sdK, residuals, run, outcome));
  const ranges = withCounts(weather, sown, { run, outcome, ownRun });
  const clock = {
    waitH,
    countH,
    dated: (hour: number) => dateAt(imbibitionMs + hour * HOUR_MS, question.site.zone),
    bedTimeFactor: bedTimeFactorOf(question),
    slowerH: slowerBy(countedC, (tempC) => rateAt(seed.curve, tempC)),
  };
  const milestone = (event: Event): Milestone | NoMilestone => {
    const eventH = outcome[`${event}H`];
    return eventH === null ? { why: outcome.whyNone! } : milestoneOf(eventH, ranges[event]!, clock);
  };
  const dates = { first: milestone('first'), half: milestone('half'), most: milestone('most') };
  return { run, outcome, ownRun, ownOutcome, members, dates };
}

/** Once most are up, the soil says nothing more of them; before, nobody knows what it did in a long gap. */
function refuseGapBeforeMost(record: SeedRecord, { mostH }: Outcome, countH: number): void {
  const gap = record.longGap(Math.ceil(countH));
  if (gap && gap.fromH < (mostH ?? countH)) throw gap.refusal;
}

/** The ranges, widened by what the bed's counts leave open of the emergence delay factor. */
function withCounts(
  ranges: Ranges,
  { question, seed, hours }: Sown,
  { run, outcome, ownRun }: Pick<Emergence, 'run' | 'outcome' | 'ownRun'>,
): Ranges {
  const learned = learnedTimeOf(question);
  if (!learned) return ranges;
  const withFactor = (timeFactor: number): CohortRun => cohortRun({ ...seed, timeFactor }, hours.countedC);
  const [fast, slow] = [withFactor(learned.from), withFactor(learned.to)];
  return withLearned(ranges, run, outcome, { fast, middle: ownRun, slow });
}

/** The emergence delay factor that counts teach; a factor that the grower gives replaces it. */
const learnedTimeOf = ({ timeFactor, learned }: Question): Middle | null =>
  timeFactor === null ? (learned?.timeFactor ?? null) : null;

/** A factor that is in the clock already leaves only its own range to be added, and a grower's own has none. */
function bedTimeFactorOf(question: Question): Span {
  const learned = learnedTimeOf(question);
  if (learned) return { from: learned.from / learned.middle, to: learned.to / learned.middle };
  return question.timeFactor === null ? question.crop.bedTimeFactor : { from: 1, to: 1 };
}
