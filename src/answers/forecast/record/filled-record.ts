import { dateAt, HOUR_MS } from '../../../basics/calendar.js';
import { RequestError } from '../../../basics/errors.js';
import { basisCode } from '../../../basics/series.js';
import type { ShouldStop } from '../../../basics/stop.js';
import type { ReadSeries } from '../../../readings/read-series.js';
import type { Bedding } from '../../question.js';
import { answerRefusal } from '../../refusal-facts.js';
import { fillGap, type MissingHours, missingHours } from '../../soil/fill-gaps.js';
import { extentOf, type Site } from '../../soil/known-hours.js';
import { recentSoil } from '../../soil/recent-soil.js';
import type { SoilRecord } from '../../soil/soil-record.js';

/** The hours at the seed from the record's start to the last value sent, with all gaps filled. */
export interface FilledRecord {
  readonly soil: SoilRecord;
  /** The hour of the wetting, counted from the record's start. */
  readonly imbibitionH: number;
  /** The hour at which the values sent end. */
  readonly knownToH: number;
  /** The hour at which the measured ones end: past years begin after it. */
  readonly measuredToH: number;
  /** Hourly means up to `knownToH` [°C]. */
  readonly knownC: Float64Array;
}

/** The values may begin this long after the wetting; their first day stands in [h]. */
const MAX_START_GAP_H = 24;
/** The wetting may lie this far beyond the last value [h]. */
const MAX_AHEAD_H = 366 * 24;

/** A day filled from its neighbours, knowing nothing of the weather, may be off by this much [K]: our judgement. */
const FILLED_SD_K = 1.5;
const FORECAST = basisCode('forecast');

/**
 * Fills the gaps of what is known of the temperature at the seed, and marks the hours filled.
 *
 * @param longestH Hours further than this after the wetting are left out.
 * @throws {RequestError} where the values begin too late or end too early for the wetting, or are too few.
 */
export function filledRecord(
  series: readonly ReadSeries[],
  bedding: Bedding,
  imbibitionMs: number,
  longestH: number,
  shouldStop?: ShouldStop,
): FilledRecord {
  const { site } = bedding;
  refuseElsewhen(series, bedding, imbibitionMs);
  const soil = recentSoil(series, bedding, imbibitionMs, imbibitionMs + longestH * HOUR_MS, shouldStop);
  const hasDays = series.some(({ days }) => days.some(({ complete }) => complete));
  if (hasDays && soil.hourlyC.every(Number.isNaN)) refuseNothingNear(imbibitionMs, site);
  const { startMs, basis } = soil;
  const imbibitionH = (imbibitionMs - startMs) / HOUR_MS;
  const knownToH = soil.hourlyC.findLastIndex((value) => !Number.isNaN(value)) + 1;
  const knownC = soil.hourlyC.subarray(0, knownToH);
  for (const gap of fillAll(knownC, imbibitionH, (hour) => startMs + hour * HOUR_MS, site)) {
    basis.fill(basisCode('filled'), gap.fromH, gap.toH);
    soil.sdK.fill(FILLED_SD_K, gap.fromH, gap.toH);
  }
  return { soil, imbibitionH, knownToH, measuredToH: lastMeasured(basis, knownToH), knownC };
}

/** The hour after the last that is no forecast; the last known of all where next to nothing is measured. */
function lastMeasured(basis: Uint8Array, knownToH: number): number {
  let end = knownToH;
  while (end > 0 && basis[end - 1]! >= FORECAST) end--;
  return end >= 24 ? end : knownToH;
}

/** Refuses what begins too late for the sowing, or ended too long before it. */
function refuseElsewhen(series: readonly ReadSeries[], { bed, site }: Bedding, imbibitionMs: number): void {
  if (bed.kind === 'indoors') return;
  const extents = series.map(extentOf);
  refuseFarAhead(imbibitionMs, Math.max(...extents.map((extent) => extent.lastMs)), site);
  const firstMs = Math.min(...extents.map((extent) => extent.firstMs));
  if (firstMs - imbibitionMs > MAX_START_GAP_H * HOUR_MS) refuseLateStart(firstMs, site);
}

/** Refuses values that lie before and after the wetting, too far off on both sides. */
function refuseNothingNear(imbibitionMs: number, site: Site): never {
  throw new RequestError(
    'gap-too-long',
    answerRefusal('gap-too-long.around', { date: dateAt(imbibitionMs, site.zone) }),
  );
}

/** Fills, in place, every missing hour between the first needed and the last known; tells which they were. */
function fillAll(
  knownC: Float64Array,
  imbibitionH: number,
  atMs: (hour: number) => number,
  site: Site,
): MissingHours[] {
  if (knownC.reduce((known, value) => (Number.isNaN(value) ? known : known + 1), 0) < 24) {
    throw new RequestError('too-few-readings', answerRefusal('too-few-readings'));
  }
  const gaps = missingHours(knownC);
  for (const gap of gaps) fillGap(knownC, gap);
  const first = knownC.findIndex((value) => !Number.isNaN(value));
  if (first - imbibitionH > MAX_START_GAP_H) refuseLateStart(atMs(first), site);
  for (let hour = first - 1; hour >= 0; hour--) knownC[hour] = knownC[Math.min(hour + 24, knownC.length - 1)]!;
  return first > imbibitionH ? [{ fromH: imbibitionH, toH: first }, ...gaps] : gaps;
}

function refuseLateStart(firstMs: number, site: Site): never {
  const firstDate = dateAt(firstMs, site.zone);
  throw new RequestError('starts-after-sowing', answerRefusal('starts-after-sowing', { firstDate }), [
    { path: ['sowing', 'date'], detail: answerRefusal('starts-after-sowing.field', { firstDate }) },
  ]);
}

function refuseFarAhead(imbibitionMs: number, lastMs: number, site: Site): void {
  if (imbibitionMs - lastMs <= MAX_AHEAD_H * HOUR_MS) return;
  throw new RequestError(
    'ends-too-early',
    answerRefusal('ends-too-early.before-wetting', { lastDate: dateAt(lastMs - 1, site.zone) }),
  );
}
