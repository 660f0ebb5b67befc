import { LRUCache } from 'lru-cache';

/** How a cache has done since the process started, and what it holds now. */
export interface CacheStats {
  /** Lookups answered from the cache, or by work that was already under way. */
  readonly hits: number;
  readonly misses: number;
  readonly bytes: number;
  readonly entries: number;
}

/** Results by key, the least recently used dropped first. */
export interface SharedCache<T extends object> {
  /** The cached result; else what `make` gives, which all callers who ask meanwhile share. A failure is not cached. */
  get(key: string, make: () => Promise<T>): Promise<T>;
  stats(): CacheStats;
}

/**
 * A cache bounded in bytes: a bound in number would let a few large results fill the memory.
 *
 * @param maxBytes The most that all entries may take, > 0; a single result above it is handed on uncached.
 * @param bytesOf  About how much memory a result takes, >= 0 [bytes].
 */
export function sharedCache<T extends object>(maxBytes: number, bytesOf: (value: T) => number): SharedCache<T> {
  const cached = new LRUCache<string, T>({
    maxSize: maxBytes,
    // A key counts as well: callers choose how long it is.
    sizeCalculation: (value, key) => ENTRY_BYTES + 2 * key.length + Math.ceil(bytesOf(value)),
  });
  const underWay = new Map<string, Promise<T>>();
  let hits = 0;
  let misses = 0;
  return {
    get(key, make) {
      const found = cached.get(key);
      const shared = found ? Promise.resolve(found) : underWay.get(key);
      if (shared) {
        hits++;
        return shared;
      }
      misses++;
      const made = make()
        .then((value) => {
          cached.set(key, value);
          return value;
        })
        .finally(() => underWay.delete(key));
      underWay.set(key, made);
      return made;
    },
    stats: () => ({ hits, misses, bytes: cached.calculatedSize, entries: cached.size }),
  };
}

/** What the bookkeeping of an entry takes, about [bytes]. */
const ENTRY_BYTES = 200;
