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
  /**
   * The cached result; else what `make` gives, which all callers who ask meanwhile share. A failure is not cached. One that
   * is the maker's own is not shared either: the next caller makes it anew.
   */
  get(key: string, make: () => Promise<T>): Promise<T>;
  stats(): CacheStats;
}

/**
 * A cache bounded in bytes: a bound in number would let a few large results fill the memory.
 *
 * @param maxBytes The most that all entries may take, > 0; a single result above it is handed on uncached.
 * @param bytesOf  About how much memory a result takes, >= 0 [bytes].
 * @param isMakersOwn Does a failure say something of the one caller whose `make` it was, such as that it has gone?
 */
export function sharedCache<T extends object>(
  maxBytes: number,
  bytesOf: (value: T) => number,
  isMakersOwn: (error: unknown) => boolean = () => false,
): SharedCache<T> {
  const cached = new LRUCache<string, T>({
    maxSize: maxBytes,
    // A key counts as well: callers choose how long it is.
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

/** What the bookkeeping of an entry takes, about [bytes]. */
const ENTRY_BYTES = 200;
