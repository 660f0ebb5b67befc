import { createHash } from 'node:crypto';
import { type FindPast, type PastSoil, pastSoil } from '../answers/past-soil.js';
import type { Bedding } from '../answers/question.js';
import { HOUR_MS } from '../basics/calendar.js';
import type { ReadSeries } from '../readings/read-series.js';

/** Soils kept: thirty years of hours take some 2 MB each. */
const MOST_KEPT = 16;

/** Past soil, worked out once for the same temperatures, bed and depth, and kept while others are not asked more lately. */
export function rememberedPast(find: FindPast = pastSoil): FindPast {
  const kept = new Map<string, PastSoil>();
  return (series, bedding, phaseMs) => {
    const key = keyOf(series, bedding, phaseMs);
    const past = kept.get(key) ?? find(series, bedding, phaseMs);
    kept.delete(key);
    kept.set(key, past);
    if (kept.size > MOST_KEPT) kept.delete(kept.keys().next().value!);
    return past;
  };
}

/** A digest of all that the soil depends on. */
function keyOf(series: readonly ReadSeries[], { site, bed, depthCm }: Bedding, phaseMs: number): string {
  const hash = createHash('sha256');
  const say = (said: unknown): void => void hash.update(`${JSON.stringify(said)}\n`);
  say([{ ...site, zone: site.zone.name }, bed, depthCm, phaseMs % HOUR_MS]);
  for (const { readings, zone, ...rest } of series) {
    say([rest, zone.name]);
    if (!readings) continue;
    for (const values of [readings.atMs, readings.valueC, readings.basis])
      hash.update(new Uint8Array(values.buffer, values.byteOffset, values.byteLength));
  }
  return hash.digest('base64');
}
