import { BEARABLE_HOURS, COHORTS, RELIEF_PER_HOUR } from './cohorts.js';

/** Harmful hours in which some of the seed is held, joined while the same cohorts are. Shape (n) each, rising. */
interface HeldStretches {
  readonly fromH: Int32Array;
  readonly toH: Int32Array;
  /** The cohorts that are not held. */
  readonly awake: Uint8Array;
}

/** The held clocks of all cohorts, each as far as it has been followed, for sowings one after the other. */
export interface HeldWatch {
  readonly stretches: HeldStretches;
  /** The first stretch that ends after the sowing. */
  first: number;
  /** By cohort: the clock stood at 0 in this hour, so it is that of every sowing up to then. */
  readonly sharedFromH: Int32Array;
  readonly next: Int32Array;
  readonly heldH: Float64Array;
  /** When it was last held. */
  readonly heldToH: Int32Array;
  readonly riskAtH: Float64Array;
}

/**
 * Ready to say when each cohort of each sowing has been held too long.
 *
 * @param awake   How many cohorts can progress in each hour. Shape (nHours).
 * @param hourlyC Hourly mean temperature at the seed [°C]. Shape (nHours).
 * @param aboveC  Hours above it harm the seed they hold [°C].
 * @param fromH   First hour that is needed.
 * @param toH     The hour after the last.
 */
export function heldWatch(
  awake: Uint8Array,
  hourlyC: Float64Array,
  aboveC: number,
  fromH: number,
  toH: number,
): HeldWatch {
  return {
    stretches: heldStretches(awake, hourlyC, aboveC, fromH, toH),
    first: 0,
    sharedFromH: new Int32Array(COHORTS + 1),
    next: new Int32Array(COHORTS + 1),
    heldH: new Float64Array(COHORTS + 1),
    heldToH: new Int32Array(COHORTS + 1),
    riskAtH: new Float64Array(COHORTS + 1).fill(Infinity),
  };
}

/** Hours looked through in one call: see `hourlyPace`. */
const CHUNK_H = 30 * 24;

function heldStretches(
  awake: Uint8Array,
  hourlyC: Float64Array,
  aboveC: number,
  firstH: number,
  endH: number,
): HeldStretches {
  const hours = endH - firstH;
  const found = { fromH: new Int32Array(hours), toH: new Int32Array(hours), awake: new Uint8Array(hours) };
  let n = 0;
  for (let hour = firstH; hour < endH; hour += CHUNK_H) {
    n = addStretches(found, n, awake, hourlyC, aboveC, hour, Math.min(endH, hour + CHUNK_H));
  }
  return { fromH: found.fromH.subarray(0, n), toH: found.toH.subarray(0, n), awake: found.awake.subarray(0, n) };
}

/** Adds the stretches of some hours to the n that are there. @returns How many there are then. */
function addStretches(
  { fromH, toH, awake: notHeld }: HeldStretches,
  n: number,
  awake: Uint8Array,
  hourlyC: Float64Array,
  aboveC: number,
  firstH: number,
  endH: number,
): number {
  let count = n;
  for (let hour = firstH; hour < endH; hour++) {
    const tempC = hourlyC[hour]!;
    const isHarmful = tempC > aboveC;
    const moving = awake[hour]!;
    if (!isHarmful || moving >= COHORTS) continue;
    if (count === 0 || toH[count - 1] !== hour || notHeld[count - 1] !== moving) {
      fromH[count] = hour;
      notHeld[count] = moving;
      count++;
    }
    toH[count - 1] = hour + 1;
  }
  return count;
}

/**
 * When a cohort of a sowing passes into risk, if it is not up by then.
 *
 * The clock is `cohortRun`'s. A clock started earlier is never behind one started later, and the same once it has stood
 * at 0 since; so the cohort's clock of an earlier sowing is followed on, and a new one started only where that one has
 * run out and may have been ahead, or lags behind the sowing: what came before that never counts.
 *
 * @param watch  Asked for sowings that never go back.
 * @param cohort 1 to 100.
 * @param sowH   The sowing's hour.
 * @param endH   What happens from here on does not matter.
 * @returns The hour after the one in which it has been held too long; where that is not before `endH`, some hour that
 * is not either, or Infinity.
 *
 * Formula: the clock grows by 1 an hour while held, falls by 0.5 an hour otherwise, not below 0; over 24 is too long.
 */
export function heldTooLongAtH(watch: HeldWatch, cohort: number, sowH: number, endH: number): number {
  const { stretches, sharedFromH, next, heldH, heldToH, riskAtH } = watch;
  const { toH } = stretches;
  while (watch.first < toH.length && toH[watch.first]! <= sowH) watch.first++;
  const isBehind = next[cohort]! < watch.first;
  if (!isBehind) follow(watch, cohort, endH);
  if (isBehind || (riskAtH[cohort]! < endH && sowH > sharedFromH[cohort]!)) {
    sharedFromH[cohort] = sowH;
    next[cohort] = watch.first;
    heldH[cohort] = 0;
    heldToH[cohort] = sowH;
    riskAtH[cohort] = Infinity;
    follow(watch, cohort, endH);
  }
  return riskAtH[cohort]!;
}

/** Follows a cohort's clock until it has run out, or to the stretches that begin before `endH`. */
function follow(watch: HeldWatch, cohort: number, endH: number): void {
  if (watch.riskAtH[cohort]! < Infinity) return;
  const { fromH, toH, awake } = watch.stretches;
  let at = watch.next[cohort]!;
  let held = watch.heldH[cohort]!;
  let heldTo = watch.heldToH[cohort]!;
  while (at < fromH.length && fromH[at]! < endH && held <= BEARABLE_HOURS) {
    if (awake[at]! < cohort) {
      const startH = Math.max(fromH[at]!, heldTo);
      held -= RELIEF_PER_HOUR * (startH - heldTo);
      if (held <= 0) {
        held = 0;
        watch.sharedFromH[cohort] = startH;
      }
      heldTo = toH[at]!;
      held += heldTo - startH;
    }
    at++;
  }
  if (held > BEARABLE_HOURS) watch.riskAtH[cohort] = heldTo - Math.ceil(held - BEARABLE_HOURS) + 1;
  watch.next[cohort] = at;
  watch.heldH[cohort] = held;
  watch.heldToH[cohort] = heldTo;
}
