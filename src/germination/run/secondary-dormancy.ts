import { COHORTS, INDUCTION_HOURS, RECOVERY_PER_HOUR } from './cohorts.js';

/** Stretches of harmful hours that inhibit some of the seed, joined while they inhibit the same cohorts; room for one an hour. */
interface InhibitedStretches {
  readonly fromH: Int32Array;
  readonly toH: Int32Array;
  /** The number of cohorts that the stretch leaves free. */
  readonly germinable: Uint8Array;
  /** There are so many; the rest of the room is free. */
  n: number;
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

/** Room for the search, over so many hours, for the hour at which each cohort of each sowing enters secondary dormancy. */
export const inductionWatch = (hours: number): InductionWatch => ({
  stretches: { fromH: new Int32Array(hours), toH: new Int32Array(hours), germinable: new Uint8Array(hours), n: 0 },
  first: 0,
  sharedFromH: new Int32Array(COHORTS + 1),
  next: new Int32Array(COHORTS + 1),
  inhibitedH: new Float64Array(COHORTS + 1),
  inhibitedToH: new Int32Array(COHORTS + 1),
  inducedAtH: new Float64Array(COHORTS + 1),
});

/**
 * Prepares the search over a record; what was found in another is forgotten.
 *
 * @param watch      Room enough for the record.
 * @param germinable Cohorts that can progress in each hour. Shape (nHours) or more.
 * @param hourlyC    Hourly mean temperature at the seed [°C]. Shape (nHours).
 * @param aboveC     Hours above it harm the seed that they inhibit [°C].
 */
export function watchOver(watch: InductionWatch, germinable: Uint8Array, hourlyC: Float64Array, aboveC: number): void {
  watch.first = 0;
  watch.sharedFromH.fill(0);
  watch.next.fill(0);
  watch.inhibitedH.fill(0);
  watch.inhibitedToH.fill(0);
  watch.inducedAtH.fill(Infinity);
  watch.stretches.n = 0;
  for (let hour = 0; hour < hourlyC.length; hour += CHUNK_H) {
    addStretches(watch.stretches, germinable, hourlyC, aboveC, hour, Math.min(hourlyC.length, hour + CHUNK_H));
  }
}

/** Hours looked through in one call: see `hourlyProgress`. */
const CHUNK_H = 30 * 24;

/** Adds the stretches of some hours to those that are there. */
function addStretches(
  stretches: InhibitedStretches,
  germinable: Uint8Array,
  hourlyC: Float64Array,
  aboveC: number,
  firstH: number,
  endH: number,
): void {
  const { fromH, toH, germinable: uninhibited } = stretches;
  let count = stretches.n;
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
  stretches.n = count;
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
  while (watch.first < stretches.n && stretches.toH[watch.first]! <= sowH) watch.first++;
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
  const { fromH, toH, germinable, n } = watch.stretches;
  let at = watch.next[cohort]!;
  let inhibited = watch.inhibitedH[cohort]!;
  let inhibitedTo = watch.inhibitedToH[cohort]!;
  while (at < n && fromH[at]! < endH && inhibited <= INDUCTION_HOURS) {
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
