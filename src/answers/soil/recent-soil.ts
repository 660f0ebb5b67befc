import { LRUCache } from 'lru-cache';
import { DAY_MS, daysBetween, HOUR_MS } from '../../basics/calendar.js';
import type { ShouldStop } from '../../basics/stop.js';
import type { ReadSeries } from '../../readings/read-series.js';
import type { Bedding } from '../question.js';
import { extentOf } from './known-hours.js';
import { isUnderSnow, SNOW_SUPPOSED } from './soil-notes.js';
import { type SoilRecord, soilRecord } from './soil-record.js';

/** Questions of so many days have one soil [ms]. */
const BLOCK_MS = 28 * DAY_MS;
/** Nobody asks again and again of a time that lies further before the last value [ms]. */
const RECENT_MS = 200 * DAY_MS;
/** Air of fewer days comes with a question, and is not asked of again [d]. */
const MIN_DAYS = 400;
/** The air is followed across holes shorter than a block wherever in it the question begins; longer ones are no matter of a block [d]. */
const MAX_MISSING_DAYS = 28;
/** A record with its model takes about a megabyte. */
const MAX_RECORDS = 6;

const records = new LRUCache<string, { readonly series: readonly ReadSeries[]; readonly record: SoilRecord }>({
  max: MAX_RECORDS,
});

/**
 * A bed's soil as `soilRecord` has it; of a time near the last value worked out once for all questions that begin in the
 * same four weeks. Its run begins up to four weeks earlier than for the question alone: they differ by what the soil still
 * feels, after 400 days, of how its run began.
 *
 * @param series     Soil and air.
 * @param bedding    The place, the bed and the depth.
 * @param fromMs     From when on the soil is wanted.
 * @param toMs       Up to when it may be.
 * @param shouldStop Asked once a year of hours.
 * @returns The record; its hours may be changed.
 */
export function recentSoil(
  series: readonly ReadSeries[],
  bedding: Bedding,
  fromMs: number,
  toMs: number,
  shouldStop?: ShouldStop,
): SoilRecord {
  const lastMs = Math.max(...series.map((one) => extentOf(one).lastMs));
  if (bedding.bed.kind === 'indoors' || toMs < lastMs || lastMs - fromMs > RECENT_MS || !series.some(isKeptAir))
    return soilRecord(series, bedding, { phaseMs: fromMs, fromMs, toMs }, shouldStop);
  const sinceBlockMs = fromMs - BLOCK_MS * Math.floor(fromMs / BLOCK_MS);
  const blockMs = fromMs - HOUR_MS * Math.floor(sinceBlockMs / HOUR_MS);
  const { site, bed, depthCm } = bedding;
  const key = JSON.stringify([{ ...site, zone: site.zone.name }, bed, depthCm, blockMs]);
  let kept = records.get(key);
  if (!kept || !areSame(kept.series, series)) {
    const bare = series.map((one) => ({ ...one, warnings: [] }));
    const wanted = { phaseMs: blockMs, fromMs: blockMs, toMs: Math.max(lastMs, blockMs) };
    kept = { series: bare, record: soilRecord(bare, bedding, wanted, shouldStop) };
    records.set(key, kept);
  }
  const { record } = kept;
  const { model, modelFromH, startMs } = record;
  const fromH = (fromMs - startMs) / HOUR_MS - modelFromH;
  const isSnowy = model !== null && isUnderSnow(model, fromH);
  return {
    ...record,
    hourlyC: record.hourlyC.slice(),
    basis: record.basis.slice(),
    swings: record.swings.slice(),
    sdK: record.sdK.slice(),
    warnings: [
      ...series.flatMap(({ warnings }) => warnings),
      ...record.warnings.filter(({ code }) => code !== SNOW_SUPPOSED || isSnowy),
    ],
  };
}

function isKeptAir({ medium, days }: ReadSeries): boolean {
  if (medium !== 'air' || days.length < MIN_DAYS) return false;
  return daysBetween(days[0]!.date, days.at(-1)!.date) < days.length + MAX_MISSING_DAYS;
}

/** The same temperatures: other objects where they have been read again, and are worked out again. */
const areSame = (kept: readonly ReadSeries[], asked: readonly ReadSeries[]): boolean =>
  kept.length === asked.length &&
  kept.every((one, i) => {
    const other = asked[i]!;
    return (Object.keys(one) as (keyof ReadSeries)[]).every((name) => name === 'warnings' || one[name] === other[name]);
  });
