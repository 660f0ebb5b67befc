import { LRUCache } from 'lru-cache';

/** Packed past soil by owner and key. */
export interface PastSoilCache {
  /** Looks in memory only. */
  peek(owner: string, key: string): Uint8Array | undefined;
  /** Looks in memory, then in the store. */
  find(owner: string, key: string): Promise<Uint8Array | undefined>;
  keep(owner: string, key: string, bytes: Uint8Array): void;
  stats(): { readonly hits: number; readonly misses: number; readonly bytes: number; readonly entries: number };
}

/** Persistent store of past soil; keys are digests of all its inputs. */
export interface PastSoilStore {
  find(owner: string, key: string): Promise<Uint8Array | undefined>;
  keep(owner: string, key: string, bytes: Uint8Array): Promise<void>;
}

/** Some sixty beds of fifteen years at one depth each; the database, a millisecond away, has the rest. */
const DEFAULT_MAX_BYTES = 24 * 1024 * 1024;

/**
 * A cache of past soil, bounded in bytes; the least recently used goes first.
 *
 * @param store  Read on a miss, and written with every entry. Its failures are reported and harmless, because past soil
 * can be computed again.
 * @param failed Called with such a failure.
 */
export function pastSoilCache({
  store,
  failed = () => {},
  maxBytes = DEFAULT_MAX_BYTES,
}: {
  readonly store?: PastSoilStore | undefined;
  readonly failed?: ((error: unknown) => void) | undefined;
  readonly maxBytes?: number;
} = {}): PastSoilCache {
  const memory = new LRUCache<string, Uint8Array>({
    maxSize: maxBytes,
    sizeCalculation: ({ byteLength }) => Math.max(1, byteLength),
  });
  const idOf = (owner: string, key: string): string => `${owner} ${key}`;
  let [hits, misses] = [0, 0];
  const counted = (found: Uint8Array | undefined): Uint8Array | undefined => {
    if (found) hits++;
    else misses++;
    return found;
  };
  return {
    peek: (owner, key) => memory.get(idOf(owner, key)),
    async find(owner, key) {
      const cached = memory.get(idOf(owner, key));
      if (cached || !store) return counted(cached);
      try {
        const stored = await store.find(owner, key);
        if (stored) memory.set(idOf(owner, key), stored);
        return counted(stored);
      } catch (error) {
        failed(error);
        return counted(undefined);
      }
    },
    keep(owner, key, bytes) {
      memory.set(idOf(owner, key), bytes);
      store?.keep(owner, key, bytes).catch(failed);
    },
    stats: () => ({ hits, misses, bytes: memory.calculatedSize, entries: memory.size }),
  };
}
