import { COHORTS, INDUCTION_HOURS, RECOVERY_PER_HOUR } from './cohorts.js';

/** Stretches of harmful hours that inhibit some of the seed, joined while they inhibit the same cohorts. Shape (n) each, rising. */
interface InhibitedStretches {
  readonly fromH: Int32Array;
  readonly toH: Int32Array;
  /** The number of cohorts that the stretch leaves free. */
  readonly germinable: Uint8Array;
}

/** The induction clocks of all cohorts, each as far as it has been followed, for sowings one after the other. */
export interface InductionWatch {
  readonly stretches: InhibitedStretches;
  /** The first stretch that ends after the sowing. */
  first: number;
  /** The hour in which each cohort's clock stood at 0: all sowings up to then share the clock. */
  readonly sharedFromH: Int32Array;
  readonly next: Int32Array;
  readonly inhibitedH: Float64Array;
  /** The hour that last inhibited it. */
  readonly inhibitedToH: Int32Array;
  readonly inducedAtH: Float64Array;
}

/**
 * Prepares the search for the hour at which each cohort of each sowing enters secondary dormancy.
 *
 * @param germinable Cohorts that can progress in each hour. Shape (nHours).
 * @param hourlyC Hourly mean temperature at the seed [°C]. Shape (nHours).
 * @param aboveC  Hours above it harm the seed that they inhibit [°C].
 * @param fromH   First hour that is needed.
 * @param toH     The hour after the last.
 */
export function inductionWatch(
  germinable: Uint8Array,
  hourlyC: Float64Array,
  aboveC: number,
  fromH: number,
  toH: number,
): InductionWatch {
  return {
    stretches: inhibitedStretches(germinable, hourlyC, aboveC, fromH, toH),
    first: 0,
    sharedFromH: new Int32Array(COHORTS + 1),
    next: new Int32Array(COHORTS + 1),
    inhibitedH: new Float64Array(COHORTS + 1),
    inhibitedToH: new Int32Array(COHORTS + 1),
    inducedAtH: new Float64Array(COHORTS + 1).fill(Infinity),
  };
}

/** Hours looked through in one call: see `hourlyProgress`. */
const CHUNK_H = 30 * 24;

function inhibitedStretches(
  germinable: Uint8Array,
  hourlyC: Float64Array,
  aboveC: number,
  firstH: number,
  endH: number,
): InhibitedStretches {
  const hours = endH - firstH;
  const found = { fromH: new Int32Array(hours), toH: new Int32Array(hours), germinable: new Uint8Array(hours) };
  let n = 0;
  for (let hour = firstH; hour < endH; hour += CHUNK_H) {
    n = addStretches(found, n, germinable, hourlyC, aboveC, hour, Math.min(endH, hour + CHUNK_H));
  }
  return {
    fromH: found.fromH.subarray(0, n),
    toH: found.toH.subarray(0, n),
    germinable: found.germinable.subarray(0, n),
  };
}

/** Adds the stretches of some hours to the n that are there. @returns How many there are then. */
function addStretches(
  { fromH, toH, germinable: uninhibited }: InhibitedStretches,
  n: number,
  germinable: Uint8Array,
  hourlyC: Float64Array,
  aboveC: number,
  firstH: number,
  endH: number,
): number {
  let count = n;
  for (let hour = firstH; hour < endH; hour++) {
    const tempC = hourlyC[hour]!;
    const isHarmful = tempC > aboveC;
    const moving = germinable[hour]!;
    if (!isHarmful || moving >= COHORTS) continue;
    if (count === 0 || toH[count - 1] !== hour || uninhibited[count - 1] !== moving) {
      fromH[count] = hour;
      uninhibited[count] = moving;
      count++;
    }
    toH[count - 1] = hour + 1;
  }
  return count;
}

/**
 * The hour at which a cohort of a sowing enters secondary dormancy, if it has not emerged by then.
 *
 * The clock is `cohortRun`'s. A clock started earlier is never behind one started later, and the same once it has stood
 * at 0 since; so the cohort's clock of an earlier sowing is followed on, and a new one started only where that one has
 * run out and may have been ahead, or lags behind the sowing: what came before that never counts.
 *
 * @param watch  Asked for sowings that never go back.
 * @param cohort 1 to 100.
 * @param sowH   The sowing's hour.
 * @param endH   Hours from here on are left out.
 * @returns The hour after the one in which dormancy was induced; where that is not before `endH`, some hour that
 * is not either, or Infinity.
 *
 * Formula: the clock grows by 1 an hour while inhibited, falls by 0.5 an hour otherwise, not below 0; induction comes above 24.
 */
export function inductionAtH(watch: InductionWatch, cohort: number, sowH: number, endH: number): number {
  const { stretches, sharedFromH, next, inhibitedH, inhibitedToH, inducedAtH } = watch;
  const { toH } = stretches;
  while (watch.first < toH.length && toH[watch.first]! <= sowH) watch.first++;
  const isBehind = next[cohort]! < watch.first;
  if (!isBehind) follow(watch, cohort, endH);
  if (isBehind || (inducedAtH[cohort]! < endH && sowH > sharedFromH[cohort]!)) {
    sharedFromH[cohort] = sowH;
    next[cohort] = watch.first;
    inhibitedH[cohort] = 0;
    inhibitedToH[cohort] = sowH;
    inducedAtH[cohort] = Infinity;
    follow(watch, cohort, endH);
  }
  return inducedAtH[cohort]!;
}

/** Follows a cohort's clock until it has run out, or to the stretches that begin before `endH`. */
function follow(watch: InductionWatch, cohort: number, endH: number): void {
  if (watch.inducedAtH[cohort]! < Infinity) return;
  const { fromH, toH, germinable } = watch.stretches;
  let at = watch.next[cohort]!;
  let inhibited = watch.inhibitedH[cohort]!;
  let inhibitedTo = watch.inhibitedToH[cohort]!;
  while (at < fromH.length && fromH[at]! < endH && inhibited <= INDUCTION_HOURS) {
    if (germinable[at]! < cohort) {
      const startH = Math.max(fromH[at]!, inhibitedTo);
      inhibited -= RECOVERY_PER_HOUR * (startH - inhibitedTo);
      if (inhibited <= 0) {
        inhibited = 0;
        watch.sharedFromH[cohort] = startH;
      }
      inhibitedTo = toH[at]!;
      inhibited += inhibitedTo - startH;
    }
    at++;
  }
  if (inhibited > INDUCTION_HOURS) watch.inducedAtH[cohort] = inhibitedTo - Math.ceil(inhibited - INDUCTION_HOURS) + 1;
  watch.next[cohort] = at;
  watch.inhibitedH[cohort] = inhibited;
  watch.inhibitedToH[cohort] = inhibitedTo;
}
