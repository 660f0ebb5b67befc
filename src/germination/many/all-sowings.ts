import { neverStop, type ShouldStop, stopIf } from '../../basics/stop.js';
import { COHORTS, LETHAL_C, LETHAL_HOURS, type Seed } from '../run/cohorts.js';
import { coldLoss } from '../run/cold-loss.js';
import { hourlyProgress } from '../run/hourly-progress.js';
import { type InductionWatch, inductionAtH, inductionWatch } from '../run/secondary-dormancy.js';
import { isUp, type RunningSums, roomForSums, sumUp, upAtH } from './running-sums.js';

/** What the grower counts, and when. */
export interface Counting {
  /** Seedlings count that are up within so many hours of sowing; whole. */
  readonly withinH: number;
  /** Percent of the seed that comes where everything suits it. */
  readonly viablePercent: number;
  /** Of what the lot can give, 0 to 1: when so much is up is told too. */
  readonly shares?: readonly number[];
}

/** The outcome of every sowing, each array in the order of the sowings. Hours since the sowing. */
export interface SowingOutcomes {
  /** 1: told; 0: an hour that matters is not known, or lies outside the record. Then all else is NaN, or 0 cohorts. */
  readonly known: Uint8Array;
  /** Hundredths of what the lot can give that are up by the count, and those of them that heat did not hold too long. */
  readonly up: Uint8Array;
  readonly upUnheld: Uint8Array;
  /** When 10, 50 and 90 % of those up by the count are up; NaN where none is. */
  readonly firstH: Float64Array;
  readonly halfH: Float64Array;
  readonly mostH: Float64Array;
  /** Percent of seeds sown. */
  readonly laboratoryPercent: Float64Array;
  readonly ifHeldAreLostPercent: Float64Array;
  /** For each of `shares`, when so much of what the lot can give is up; NaN where that is not by the count. */
  readonly sharesH: readonly Float64Array[];
}

/** Running sums start anew with the first sowing after so long, and so stay small and exact [h]. */
const CHUNK_H = 365 * 24;

/**
 * The outcomes of many sowings in one long record of hourly seed temperatures: `cohortRun` and `outcomeAt` of each,
 * all at once.
 *
 * Cohorts come up in order, and of those up the slow ones were held the longest; so the stands are found by halving,
 * and the times are those of single cohorts, for which the sowing one day later never comes up sooner.
 *
 * @param seed    How the seed answers to temperature.
 * @param hourlyC Hourly mean temperature at the seed [°C]. Shape (nHours); NaN: not known.
 * @param sowH    Hours of the record at which sowings are made (whole, never falling). Shape (nSowings).
 * @param counting When the grower counts.
 * @param shouldStop Asked once a year of sowings.
 *
 * Accuracy: stands as from `cohortRun`; times within 1e-6 h of it.
 * Cost: O(nHours), 100 steps a day, and some hundred steps a sowing.
 */
export function allSowings(
  seed: Seed,
  hourlyC: Float64Array,
  sowH: ArrayLike<number>,
  { withinH, viablePercent, shares = [] }: Counting,
  shouldStop: ShouldStop = neverStop,
): SowingOutcomes {
  const outcomes = nothingKnown(sowH.length, shares.length);
  const nHours = hourlyC.length;
  const sownAtH = Int32Array.from(sowH);
  let next = 0;
  let end = sownAtH.length;
  while (next < end && sownAtH[next]! < 0) next++;
  while (end > next && sownAtH[end - 1]! >= nHours) end--;
  if (next === end) return outcomes;

  const firstH = sownAtH[next]!;
  const lastH = sownAtH[end - 1]!;
  const toH = Math.min(nHours, lastH + withinH);
  const hourly = hourlyProgress(seed, hourlyC, firstH, toH);
  const watch = inductionWatch(hourly.germinable, hourlyC, seed.hotThresholdC, firstH, toH);
  const lossAt = seed.chillingSensitive ? (atH: number) => coldLoss(hourlyC, atH) : () => 0;
  const killedAtH = killedAt(hourlyC);
  const knownToH = knownTo(hourlyC);
  const shareCohorts = shares.map(cohortOfShare);
  const sums = roomForSums(seed, hourly, Math.min(CHUNK_H, lastH - firstH) + withinH);

  const followed: Followed = { sums, watch, lossAt, killedAtH, knownToH, shareCohorts, up: 0, upUnheld: 0 };
  while (next < end) {
    stopIf(shouldStop);
    const chunkFromH = sownAtH[next]!;
    let chunkEnd = next + 1;
    while (chunkEnd < end && sownAtH[chunkEnd]! <= chunkFromH + CHUNK_H) chunkEnd++;
    sumUp(sums, chunkFromH, Math.min(nHours, sownAtH[chunkEnd - 1]! + withinH));
    followed.up = 0;
    followed.upUnheld = 0;
    for (; next < chunkEnd; next++) follow(followed, outcomes, next, sownAtH[next]!, withinH, viablePercent);
  }
  return outcomes;
}

/** What is followed from sowing to sowing. */
interface Followed {
  readonly sums: RunningSums;
  readonly watch: InductionWatch;
  /** The share that cold takes of a sowing, 0 to 1. */
  readonly lossAt: (sowH: number) => number;
  readonly killedAtH: (sowH: number) => number;
  readonly knownToH: (sowH: number) => number;
  readonly shareCohorts: readonly number[];
  /** As the sowing before had them: where to look first. */
  up: number;
  upUnheld: number;
}

/** Tells what one sowing does. */
function follow(
  followed: Followed,
  outcomes: SowingOutcomes,
  i: number,
  atH: number,
  withinH: number,
  viablePercent: number,
): void {
  const { sums, watch, shareCohorts } = followed;
  const countH = Math.min(atH + withinH, followed.killedAtH(atH));
  const byH = Math.min(countH, followed.knownToH(atH));
  const up = lastOf(COHORTS, followed.up, (cohort) => isUp(sums, cohort, atH, byH));
  followed.up = up;
  if (up < COHORTS && byH < countH) return;
  const allUpH = up > 0 ? atH + Math.ceil(upAtH(sums, up, atH, byH)) : atH;
  const upUnheld = lastOf(up, followed.upUnheld, (cohort) => {
    const inhibitedH = inductionAtH(watch, cohort, atH, allUpH);
    return inhibitedH >= allUpH || isUp(sums, cohort, atH, inhibitedH);
  });
  followed.upUnheld = upUnheld;
  outcomes.known[i] = 1;
  outcomes.up[i] = up;
  outcomes.upUnheld[i] = upUnheld;
  outcomes.laboratoryPercent[i] = (viablePercent * up) / COHORTS;
  outcomes.ifHeldAreLostPercent[i] = ((viablePercent * upUnheld) / COHORTS) * (1 - followed.lossAt(atH));
  if (up > 0) {
    outcomes.firstH[i] = upAtH(sums, Math.ceil(0.1 * up), atH, byH);
    outcomes.halfH[i] = upAtH(sums, Math.ceil(0.5 * up), atH, byH);
    outcomes.mostH[i] = upAtH(sums, Math.ceil(0.9 * up), atH, byH);
  }
  for (let k = 0; k < shareCohorts.length; k++) {
    const cohort = shareCohorts[k]!;
    if (cohort <= up) outcomes.sharesH[k]![i] = cohort === 0 ? 0 : upAtH(sums, cohort, atH, byH);
  }
}

function nothingKnown(nSowings: number, nShares: number): SowingOutcomes {
  const unknown = (): Float64Array => new Float64Array(nSowings).fill(NaN);
  return {
    known: new Uint8Array(nSowings),
    up: new Uint8Array(nSowings),
    upUnheld: new Uint8Array(nSowings),
    firstH: unknown(),
    halfH: unknown(),
    mostH: unknown(),
    laboratoryPercent: unknown(),
    ifHeldAreLostPercent: unknown(),
    sharesH: Array.from({ length: nShares }, unknown),
  };
}

/** The first cohort with which so much of what the lot can give is up. */
function cohortOfShare(share: number): number {
  let cohort = 0;
  while (cohort / COHORTS < share) cohort++;
  return cohort;
}

/**
 * The last of the cohorts 1 to n that pass, of which none passes after one that does not; 0: none.
 *
 * @param guess Looked at first, then the one beside it: what the sowing before gave, which seldom changes by more.
 */
function lastOf(n: number, guess: number, passes: (cohort: number) => boolean): number {
  let passing = 0;
  let failing = n + 1;
  let next = Math.min(guess, n);
  while (failing - passing > 1) {
    const middle = next > passing && next < failing ? next : (passing + failing) >> 1;
    const isPassing = passes(middle);
    if (isPassing) passing = middle;
    else failing = middle;
    next = middle === guess ? guess + (isPassing ? 1 : -1) : 0;
  }
  return passing;
}

/** For sowings one after the other: when all seed not yet up has borne too many hours of killing heat. */
function killedAt(hourlyC: Float64Array): (sowH: number) => number {
  const lethalH: number[] = [];
  for (let hour = 0; hour < hourlyC.length; hour++) if (hourlyC[hour]! > LETHAL_C) lethalH.push(hour);
  let first = 0;
  return (sowH) => {
    while (first < lethalH.length && lethalH[first]! < sowH) first++;
    return (lethalH[first + LETHAL_HOURS] ?? Infinity) + 1;
  };
}

/** For sowings one after the other: the first hour that is not known. */
function knownTo(hourlyC: Float64Array): (sowH: number) => number {
  let to = 0;
  return (sowH) => {
    to = Math.max(to, sowH);
    while (to < hourlyC.length && !Number.isNaN(hourlyC[to]!)) to++;
    return to;
  };
}
