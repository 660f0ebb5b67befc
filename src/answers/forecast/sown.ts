import type { ShouldStop } from '../../basics/stop.js';
import { type ChartAnswer, chartOf } from '../../germination/curve/chart.js';
import type { Seed } from '../../germination/run/cohorts.js';
import type { Extrapolation } from '../ahead/hours-ahead.js';
import type { FindPast, PastSoil } from '../ahead/past-soil.js';
import { type Bedding, type Question, seedDepthCm } from '../question.js';
import { refuseDepth } from '../soil/refuse-depth.js';
import { type CountPeriod, countPeriodOf, imbibitionMsOf } from './count-period.js';
import { assumedExtrapolation } from './extrapolation.js';
import { type SeedRecord, seedRecord } from './record/seed-temperature.js';
import { seedOf, viablePercentOf } from './seed-of.js';
import { type SownHours, sownHours } from './sown-hours.js';

/** A sowing with its seed, its bed and its temperatures: all that a forecast is worked out from. */
export interface Sown {
  readonly question: Question;
  readonly bedding: Bedding;
  readonly seed: Seed;
  /** Percent of the seed that comes where everything suits it. */
  readonly viablePercent: number;
  readonly chart: (meanC: number) => ChartAnswer;
  readonly record: SeedRecord;
  readonly beyond: Extrapolation;
  readonly past: PastSoil | null;
  readonly period: CountPeriod;
  readonly hours: SownHours;
}

/**
 * The seed, the temperatures and the count of the sowing that a question asks about.
 *
 * @throws {RequestError} where the dates contradict one another, the depth cannot be, or the temperatures do not suffice.
 */
export function sownOf(question: Question, findPast: FindPast, shouldStop: ShouldStop | undefined): Sown {
  const { bed, site, series, sowing } = question;
  const imbibitionMs = imbibitionMsOf(question);
  const depthCm = seedDepthCm(question);
  refuseDepth(bed.kind, depthCm, ['sowing', 'depthCm']);
  const bedding = { site, bed, depthCm };
  const { beyond, past } = assumedExtrapolation({ ...question, ...bedding }, imbibitionMs, findPast, shouldStop);
  const record = seedRecord(series, bedding, imbibitionMs, beyond, { past, neededH: 0 }, shouldStop);
  const seed = seedOf(question);
  const chart = chartOf(question.crop);
  const period = countPeriodOf(question, imbibitionMs, chart, seed.timeFactor, record, beyond);
  return {
    question,
    bedding,
    seed,
    viablePercent: viablePercentOf(question, seed),
    chart,
    record,
    beyond,
    past,
    period,
    hours: sownHours(record, beyond, sowing.date, period, site.zone),
  };
}
