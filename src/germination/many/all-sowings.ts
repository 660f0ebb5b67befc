import { neverStop, type ShouldStop, stopIf } from '../../basics/stop.js';
import { COHORTS, LETHAL_C, LETHAL_HOURS, type Seed } from '../run/cohorts.js';
import { coldLoss } from '../run/cold-loss.js';
import { progressInto } from '../run/hourly-progress.js';
import { type InductionWatch, inductionAtH, inductionWatch, watchOver } from '../run/secondary-dormancy.js';
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
export const allSowings = (
  seed: Seed,
  hourlyC: Float64Array,
  sowH: ArrayLike<number>,
  counting: Counting,
  shouldStop: ShouldStop = neverStop,
): SowingOutcomes => sowingsOf(seed, counting)(hourlyC, sowH, shouldStop);

/**
 * `allSowings` of one record after another: the seed's speeds are worked out once, and room for a year's hours is used again.
 *
 * @returns Asked with a record and its sowings.
 */
export function sowingsOf(
  seed: Seed,
  { withinH, viablePercent, shares = [] }: Counting,
): (hourlyC: Float64Array, sowH: ArrayLike<number>, shouldStop?: ShouldStop) => SowingOutcomes {
  const progressOf = progressInto(seed);
  const shareCohorts = shares.map(cohortOfShare);
  let room: Room | null = null;
  return (hourlyC, sowH, shouldStop = neverStop) => {
    const outcomes = nothingKnown(sowH.length, shares.length);
    const nHours = hourlyC.length;
    const sownAtH = new Int32Array(sowH);
    let next = 0;
    let end = sownAtH.length;
    while (next < end && sownAtH[next]! < 0) next++;
    while (end > next && sownAtH[end - 1]! >= nHours) end--;
    while (next < end) {
      stopIf(shouldStop);
      const fromH = sownAtH[next]!;
      let chunkEnd = next + 1;
      while (chunkEnd < end && sownAtH[chunkEnd]! <= fromH + CHUNK_H) chunkEnd++;
      const toH = Math.min(nHours, sownAtH[chunkEnd - 1]! + withinH);
      const hours = toH - fromH;
      if (room === null || room.hours < hours) room = roomFor(seed, hours);
      const { sums, watch } = room;
      const chunkC = hourlyC.subarray(fromH, toH);
      progressOf(sums.hourly, chunkC);
      sumUp(sums, 0, hours);
      watchOver(watch, sums.hourly.germinable, chunkC, seed.hotThresholdC);
      const followed: Followed = {
        ...{ sums, watch, shareCohorts, withinH, viablePercent, hourlyC, fromH },
        chillingSensitive: seed.chillingSensitive,
        killedAtH: killedAt(chunkC),
        knownToH: knownTo(chunkC),
        up: 0,
        upUnheld: 0,
      };
      for (; next < chunkEnd; next++) follow(followed, outcomes, next, sownAtH[next]! - fromH);
    }
    return outcomes;
  };
}

/** Room for so many hours on end. */
interface Room {
  readonly hours: number;
  readonly sums: RunningSums;
  readonly watch: InductionWatch;
}

function roomFor(seed: Seed, hours: number): Room {
  const hourly = { germinable: new Uint8Array(hours), progressPerHour: new Float64Array(hours) };
  return { hours, sums: roomForSums(seed, hourly, hours), watch: inductionWatch(hours) };
}

/** What is followed from sowing to sowing of a chunk of the record; hours are those since its first, unless said otherwise. */
interface Followed {
  readonly sums: RunningSums;
  readonly watch: InductionWatch;
  readonly shareCohorts: readonly number[];
  readonly withinH: number;
  readonly viablePercent: number;
  /** The whole record, and the hour of it at which the chunk begins. */
  readonly hourlyC: Float64Array;
  readonly fromH: number;
  readonly chillingSensitive: boolean;
  readonly killedAtH: (sowH: number) => number;
  readonly knownToH: (sowH: number) => number;
  /** As the sowing before had them: where to look first. */
  up: number;
  upUnheld: number;
}

/** Tells what one sowing does. */
function follow(followed: Followed, outcomes: SowingOutcomes, i: number, atH: number): void {
  const { sums, shareCohorts, viablePercent } = followed;
  const countH = Math.min(atH + followed.withinH, followed.killedAtH(atH));
  const byH = Math.min(countH, followed.knownToH(atH));
  const up = cohortsUp(sums, followed.up, atH, byH);
  followed.up = up;
  if (up < COHORTS && byH < countH) return;
  const allUpH = up > 0 ? atH + Math.ceil(upAtH(sums, up, atH, byH)) : atH;
  const upUnheld = cohortsUpUnheld(followed, up, atH, allUpH);
  followed.upUnheld = upUnheld;
  outcomes.known[i] = 1;
  outcomes.up[i] = up;
  outcomes.upUnheld[i] = upUnheld;
  outcomes.laboratoryPercent[i] = (viablePercent * up) / COHORTS;
  const lost = followed.chillingSensitive ? coldLoss(followed.hourlyC, followed.fromH + atH) : 0;
  outcomes.ifHeldAreLostPercent[i] = ((viablePercent * upUnheld) / COHORTS) * (1 - lost);
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
 * The cohorts that are up before an hour: found by halving, as they come up in order.
 *
 * @param guess Looked at first, then the one beside it: what the sowing before gave, which seldom changes by more.
 */
function cohortsUp(sums: RunningSums, guess: number, atH: number, byH: number): number {
  let passing = 0;
  let failing = COHORTS + 1;
  let next = guess;
  while (failing - passing > 1) {
    const middle = next > passing && next < failing ? next : (passing + failing) >> 1;
    const isPassing = isUp(sums, middle, atH, byH);
    if (isPassing) passing = middle;
    else failing = middle;
    next = middle === guess ? guess + (isPassing ? 1 : -1) : 0;
  }
  return passing;
}

/** Those of the cohorts that are up by `allUpH` which heat did not hold too long before: the fast ones, found in the same way. */
function cohortsUpUnheld({ sums, watch, upUnheld }: Followed, up: number, atH: number, allUpH: number): number {
  const guess = Math.min(upUnheld, up);
  let passing = 0;
  let failing = up + 1;
  let next = guess;
  while (failing - passing > 1) {
    const middle = next > passing && next < failing ? next : (passing + failing) >> 1;
    const inhibitedH = inductionAtH(watch, middle, atH, allUpH);
    const isPassing = inhibitedH >= allUpH || isUp(sums, middle, atH, inhibitedH);
    if (isPassing) passing = middle;
    else failing = middle;
    next = middle === upUnheld ? upUnheld + (isPassing ? 1 : -1) : 0;
  }
  return passing;
}

/** For sowings one after the other: when all seed not yet up has borne too many hours of killing heat. */
function killedAt(hourlyC: Float64Array): (sowH: number) => number {
  const lethalH = hoursAbove(hourlyC, LETHAL_C);
  let first = 0;
  return (sowH) => {
    while (first < lethalH.length && lethalH[first]! < sowH) first++;
    return (lethalH[first + LETHAL_HOURS] ?? Infinity) + 1;
  };
}

function hoursAbove(hourlyC: Float64Array, limitC: number): number[] {
  const hours: number[] = [];
  for (let hour = 0; hour < hourlyC.length; hour++) if (hourlyC[hour]! > limitC) hours.push(hour);
  return hours;
}

/** For sowings one after the other: the first hour that is not known. */
function knownTo(hourlyC: Float64Array): (sowH: number) => number {
  let to = firstUnknown(hourlyC, 0);
  return (sowH) => {
    if (sowH > to) to = firstUnknown(hourlyC, sowH);
    return to;
  };
}

function firstUnknown(hourlyC: Float64Array, fromH: number): number {
  let to = fromH;
  while (to < hourlyC.length && !Number.isNaN(hourlyC[to]!)) to++;
  return to;
}
