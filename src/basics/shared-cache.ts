import { LRUCache } from 'lru-cache';

/** A cache's counts since the process started, and its present size. */
export interface CacheStats {
  /** Lookups answered from the cache or by work already under way. */
  readonly hits: number;
  readonly misses: number;
  readonly bytes: number;
  readonly entries: number;
}

/** Results by key; the least recently used go first. */
export interface SharedCache<T extends object> {
  /**
   * Returns the cached result, else that of `make`, which concurrent callers share. Failures are not cached. A failure
   * of the maker's own is not shared either: the next caller makes the result anew.
   */
  get(key: string, make: () => Promise<T>): Promise<T>;
  stats(): CacheStats;
}

/**
 * A cache bounded in bytes, because a bound in number would let a few large results fill the memory.
 *
 * @param maxBytes The most that all entries may take, > 0; a single result above it is returned uncached.
 * @param bytesOf  Approximate memory of a result, >= 0 [bytes].
 * @param isMakersOwn True for a failure that concerns only the caller whose `make` ran, such as a closed connection.
 */
export function sharedCache<T extends object>(
  maxBytes: number,
  bytesOf: (value: T) => number,
  isMakersOwn: (error: unknown) => boolean = () => false,
): SharedCache<T> {
  const cached = new LRUCache<string, T>({
    maxSize: maxBytes,
    // The key counts too, because callers choose its length.
    sizeCalculation: (value, key) => ENTRY_BYTES + 2 * key.length + Math.ceil(bytesOf(value)),
  });
  const underWay = new Map<string, Promise<T>>();
  let hits = 0;
  let misses = 0;
  const get = async (key: string, make: () => Promise<T>): Promise<T> => {
    const found = cached.get(key);
    if (found) {
      hits++;
      return found;
    }
    const shared = underWay.get(key);
    if (shared) {
      try {
        const made = await shared;
        hits++;
        return made;
      } catch (error) {
        if (!isMakersOwn(error)) throw error;
        return get(key, make);
      }
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
  };
  return {
    get,
    stats: () => ({ hits, misses, bytes: cached.calculatedSize, entries: cached.size }),
  };
}

/** Approximate memory of an entry's bookkeeping [bytes]. */
const ENTRY_BYTES = 200;
