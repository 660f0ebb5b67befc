import { createHash } from 'node:crypto';
import { LRUCache } from 'lru-cache';
import { type FindPast, type PastSoil, type PastSoils, pastAt, pastSoils } from '../answers/past-soil.js';
import type { ShouldStop } from '../basics/stop.js';
import { type GardenPlan, gardenPlan } from '../garden/plan.js';
import type { PlanQuestion } from '../garden/plan-question.js';
import type { ReadSeries } from '../readings/read-series.js';
import type { PackedPast } from './jobs.js';
import { packPastSoil, unpackPastSoil } from './pack-past-soil.js';
import { pastSoilKey } from './past-soil-key.js';
import { digestOfSeries, type SeriesColumns, seriesOf, withWarnings } from './series-columns.js';

const MAX_PAST_BYTES = 48 * 1024 * 1024;
const MAX_SERIES_BYTES = 24 * 1024 * 1024;
/** A day as an object takes about so many times what it takes as columns. */
const OBJECT_OVER_COLUMNS = 4;
const MAX_PLANS = 64;

/** Past soil at one depth, and whether the main thread has been given it. */
interface KnownPast {
  readonly past: PastSoil;
  readonly isPacked: boolean;
}

/** What one thread keeps between questions. */
export interface ThreadCache {
  /** The series of some columns; of one digest it is the same days. */
  seriesFrom(columns: SeriesColumns): ReadSeries;
  /** Finds past soil here, or among what came with the question, or works it out; what it works out is added to `made`. */
  findPastFor(modelVersion: string, remembered: readonly PackedPast[], made: PackedPast[]): FindPast;
  plan(question: PlanQuestion, findPast: FindPast, shouldStop: ShouldStop): GardenPlan;
}

export function threadCache(workOut: (...asked: Parameters<FindPast>) => PastSoils = pastSoils): ThreadCache {
  const pasts = new LRUCache<string, KnownPast>({
    maxSize: MAX_PAST_BYTES,
    sizeCalculation: ({ past }) => past.hourlyC.byteLength + past.comingC.byteLength + 1024,
  });
  const series = new LRUCache<string, ReadSeries>({ maxSize: MAX_SERIES_BYTES });
  const plans = new LRUCache<string, GardenPlan>({ max: MAX_PLANS });
  return {
    seriesFrom(columns) {
      const known = series.get(columns.digest);
      if (known) return withWarnings(known, columns.warnings);
      const read = seriesOf(columns);
      series.set(columns.digest, read, { size: OBJECT_OVER_COLUMNS * columns.memory.byteLength + 1 });
      return read;
    },
    findPastFor: (modelVersion, remembered, made) => (of, bedding, phaseMs, shouldStop) => {
      const keyAt = (depthCm: number): string => pastSoilKey(of, { ...bedding, depthCm }, phaseMs, modelVersion);
      const key = keyAt(bedding.depthCm);
      const find = (): KnownPast => {
        const sent = remembered.find((one) => one.key === key);
        const known = sent && unpacked(sent.bytes);
        if (known) return { past: known, isPacked: true };
        const bare = of.map((one) => withWarnings(one, []));
        const all = workOut(bare, bedding, phaseMs, shouldStop);
        for (const [i, depthCm] of all.depthsCm.entries()) {
          pasts.set(keyAt(depthCm), { past: all.soils[i]!, isPacked: false });
        }
        return { past: pastAt(all, bedding.depthCm), isPacked: false };
      };
      const { past, isPacked } = pasts.get(key) ?? find();
      // Other depths of the run are packed once they are asked for: most never are.
      if (!isPacked) made.push({ key, bytes: packPastSoil(past) });
      pasts.set(key, { past, isPacked: true });
      // What the series warn of comes first, as where it is worked out from them; it is no part of the soil.
      const warnings = of.flatMap((one) => one.warnings);
      return warnings.length === 0 ? past : { ...past, warnings: [...warnings, ...past.warnings] };
    },
    plan({ series: of, site, ...rest }, findPast, shouldStop) {
      const said = [{ ...site, zone: site.zone.name }, rest, of.map((one) => [digestOfSeries(one), one.warnings])];
      const key = createHash('sha256').update(JSON.stringify(said)).digest('base64');
      const plan = plans.get(key) ?? gardenPlan({ series: of, site, ...rest }, findPast, shouldStop);
      plans.set(key, plan);
      return plan;
    },
  };
}

/** Nothing where the bytes cannot be read: another program may have kept them. */
function unpacked(bytes: Uint8Array): PastSoil | null {
  try {
    return unpackPastSoil(bytes);
  } catch {
    return null;
  }
}
