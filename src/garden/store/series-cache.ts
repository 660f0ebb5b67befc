import type { TableClimate } from '../../answers/climate/table-climate.js';
import type { MinimaTuning } from '../../answers/climate/tuned-minima.js';
import { type SharedCache, sharedCache } from '../../basics/shared-cache.js';
import type { Normals } from '../../climate/normals.js';
import type { ReadSeries } from '../../readings/read-series.js';
import type { ReadingsToCome } from '../bed/bed-facts.js';
import type { Store } from './store.js';

/** The series of a place or of a bed's thermometers, as read from the store. */
export interface CachedSeries {
  readonly series: readonly ReadSeries[];
  readonly normals: Normals | null;
  /** From the climate table, where the place has neither enough years nor normals; null: they do. */
  readonly climate: TableClimate | null;
  /** How the air's minima were moved to the frost dates that the owner knows; null: they were not. */
  readonly tuning: MinimaTuning | null;
  readonly note: ReadingsToCome | null;
}

export const NOT_MEASURED: CachedSeries = { series: [], normals: null, climate: null, tuning: null, note: null };

/** Sixteen gardens with thirty years of air each: the rest is read again, in a millisecond or two. */
const MAX_BYTES = 32 * 1024 * 1024;
/** A day as an object with its date and its numbers, and once more as columns for the threads [bytes]. */
const DAY_BYTES = 183;

const caches = new WeakMap<Store, SharedCache<CachedSeries>>();

/** The cache of what was read from a store: one of its own for each, which goes with it. */
export function seriesCacheOf(store: Store): SharedCache<CachedSeries> {
  const cache = caches.get(store) ?? sharedCache<CachedSeries>(MAX_BYTES, bytesOf);
  caches.set(store, cache);
  return cache;
}

const bytesOf = ({ series }: CachedSeries): number =>
  series.reduce((sum, { days, readings }) => sum + DAY_BYTES * days.length + bytesOfReadings(readings), 0);

const bytesOfReadings = (readings: ReadSeries['readings']): number =>
  readings ? readings.atMs.byteLength + readings.valueC.byteLength + readings.basis.byteLength : 0;
