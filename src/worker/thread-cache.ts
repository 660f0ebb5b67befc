import { LRUCache } from 'lru-cache';
import { foldPast, unfoldPast } from '../answers/ahead/packed-past.js';
import { type FindPast, type PastSoil, type PastSoils, pastAt, pastSoils } from '../answers/ahead/past-soil.js';
import { digestOfJson } from '../basics/digest.js';
import type { ShouldStop } from '../basics/stop.js';
import { type GardenPlan, gardenPlan } from '../garden/plan/plan.js';
import type { PlanQuestion } from '../garden/plan/plan-question.js';
import type { ReadSeries } from '../readings/read-series.js';
import type { PackedPast } from './jobs.js';
import { pastSoilKey } from './past-soil-key.js';
import { digestOfSeries, type SeriesColumns, seriesOf, withWarnings } from './series-columns.js';

/** Five beds' depths of thirty years; others are unpacked from the job in some milliseconds. */
const MAX_PAST_BYTES = 12 * 1024 * 1024;
/** Five places of thirty years. */
const MAX_SERIES_BYTES = 8 * 1024 * 1024;
/** Approximate memory of a day as an object over that of its columns. */
const OBJECT_OVER_COLUMNS = 4;
const MAX_PLANS = 64;

/** The caches of one thread. */
export interface ThreadCache {
  /** The series of columns; equal digests share the same days. */
  seriesFrom(columns: SeriesColumns): ReadSeries;
  /** Finds past soil here or in the job, or else computes it and adds it to `made`. */
  findPastFor(modelVersion: string, remembered: readonly PackedPast[], made: PackedPast[]): FindPast;
  plan(question: PlanQuestion, findPast: FindPast, shouldStop: ShouldStop): GardenPlan;
}

/** @param workOut Computes a bed's past soil at all depths that one run gives. */
export function threadCache(workOut: (...args: Parameters<FindPast>) => PastSoils = pastSoils): ThreadCache {
  const pasts = new LRUCache<string, PastSoil>({
    maxSize: MAX_PAST_BYTES,
    sizeCalculation: ({ hourlyC, comingC }) => hourlyC.byteLength + comingC.byteLength + 1024,
  });
  const series = new LRUCache<string, ReadSeries>({ maxSize: MAX_SERIES_BYTES });
  const plans = new LRUCache<string, GardenPlan>({ max: MAX_PLANS });
  return {
    seriesFrom(columns) {
      const cached = series.get(columns.digest);
      if (cached) return withWarnings(cached, columns.warnings);
      const read = seriesOf(columns);
      series.set(columns.digest, read, { size: OBJECT_OVER_COLUMNS * columns.memory.byteLength + 1 });
      return read;
    },
    findPastFor: (modelVersion, remembered, made) => (of, bedding, phaseMs, shouldStop) => {
      const key = pastSoilKey(of, bedding, phaseMs, modelVersion);
      const find = (): PastSoil => {
        const sent = remembered.find((one) => one.key === key);
        const unpacked = sent && unfolded(sent.bytes);
        if (unpacked) return unpacked;
        const bare = of.map((one) => withWarnings(one, []));
        const found = workOut(bare, bedding, phaseMs, shouldStop);
        // The next question about the bed may have another crop, with another sowing depth.
        found.soils.forEach((soil, i) => {
          const at = { ...bedding, depthCm: found.depthsCm[i]! };
          made.push({ key: pastSoilKey(of, at, phaseMs, modelVersion), bytes: foldPast(soil) });
        });
        return pastAt(found, bedding.depthCm);
      };
      const past = pasts.get(key) ?? find();
      pasts.set(key, past);
      // The series' own warnings come first, as in a fresh computation; the cached soil does not hold them.
      const warnings = of.flatMap((one) => one.warnings);
      return warnings.length === 0 ? past : { ...past, warnings: [...warnings, ...past.warnings] };
    },
    plan({ series: of, site, ...rest }, findPast, shouldStop) {
      const inputs = [{ ...site, zone: site.zone.name }, rest, of.map((one) => [digestOfSeries(one), one.warnings])];
      const key = digestOfJson(inputs);
      const plan = plans.get(key) ?? gardenPlan({ series: of, site, ...rest }, findPast, shouldStop);
      plans.set(key, plan);
      return plan;
    },
  };
}

/** Null for bytes that another version of the program may have stored. */
function unfolded(bytes: Uint8Array): PastSoil | null {
  try {
    return unfoldPast(bytes);
  } catch {
    return null;
  }
}
