import { createHash } from 'node:crypto';
import type { ReadSeries } from '../readings/read-series.js';

/**
 * What was found, kept while others are not asked more lately.
 *
 * @param most  So many are kept.
 * @param keyOf A text that differs wherever what is found may.
 */
export function rememberedFind<Asked extends readonly unknown[], Found>(
  most: number,
  keyOf: (...asked: Asked) => string,
  find: (...asked: Asked) => Found,
): (...asked: Asked) => Found {
  const kept = new Map<string, Found>();
  return (...asked) => {
    const key = keyOf(...asked);
    const found = kept.get(key) ?? find(...asked);
    kept.delete(key);
    kept.set(key, found);
    if (kept.size > most) kept.delete(kept.keys().next().value!);
    return found;
  };
}

/** A digest of temperatures, and of what else is said. */
export function digestOf(series: readonly ReadSeries[], ...said: readonly unknown[]): string {
  const hash = createHash('sha256');
  const say = (one: unknown): void => void hash.update(`${JSON.stringify(one)}\n`);
  say(said);
  for (const { readings, zone, ...rest } of series) {
    say([rest, zone.name]);
    if (!readings) continue;
    for (const values of [readings.atMs, readings.valueC, readings.basis])
      hash.update(new Uint8Array(values.buffer, values.byteOffset, values.byteLength));
  }
  return hash.digest('base64');
}
