import { COHORTS, type CohortRun } from './cohorts.js';

/** What the grower finds on the count day. Hours since wetting; stands in percent of seeds sown. */
export interface Outcome {
  /** When 10, 50 and 90 % of those up by the count day are up; null where none is. */
  readonly firstH: number | null;
  readonly halfH: number | null;
  readonly mostH: number | null;
  readonly laboratoryPercent: number;
  readonly ifHeldAreLostPercent: number;
  /** Some of the seed that can come up has not by the count. */
  readonly someWait: boolean;
  readonly whyNone: 'not-by-count-day' | 'not-at-this-temperature' | null;
}

/**
 * What is up on the count day, and when it came.
 *
 * Two stands, never one: the laboratory's, in which held seed only waits, and the one without the cohorts that heat held
 * longer than they are known to bear and the share that cold took. The gap between them is the risk.
 *
 * @param run The cohorts' times.
 * @param countH When the grower counts [h since wetting]; finite.
 * @param viablePercent Percent of the seed that comes where everything suits it: the crop's best cell or the lot's own test.
 */
export function outcomeAt(run: CohortRun, countH: number, viablePercent: number): Outcome {
  const up = countUpBy(run, countH);
  let atRisk = 0;
  for (let j = 0; j < up; j++) if (run.heatInducedAtH[j]! <= run.upAtH[j]!) atRisk++;
  const timeOf = (share: number): number | null => (up === 0 ? null : run.upAtH[Math.ceil(share * up) - 1]!);
  return {
    firstH: timeOf(0.1),
    halfH: timeOf(0.5),
    mostH: timeOf(0.9),
    laboratoryPercent: (viablePercent * up) / COHORTS,
    ifHeldAreLostPercent: ((viablePercent * (up - atRisk)) / COHORTS) * (1 - run.coldLoss),
    someWait: up < COHORTS,
    whyNone: up > 0 ? null : run.everWarmEnough ? 'not-by-count-day' : 'not-at-this-temperature',
  };
}

/** Cohorts up by an hour; they come up in order. */
export function countUpBy(run: CohortRun, hour: number): number {
  let up = 0;
  while (up < COHORTS && run.upAtH[up]! <= hour) up++;
  return up;
}
