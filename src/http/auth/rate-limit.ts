import { LRUCache } from 'lru-cache';
import type { TakeAllowance } from '../../garden/store/allowance.js';

/** A caller's remaining allowance. */
export interface RateVerdict {
  readonly isAllowed: boolean;
  /** Requests allowed at once. */
  readonly remaining: number;
  /** Seconds until one more is allowed [s], >= 1. */
  readonly nextInS: number;
}

/** Counts one request of a caller. */
export type RateLimit = (caller: string, nowMs: number) => Promise<RateVerdict>;

export interface RateLimitOptions {
  /** The policy's name in headers. */
  readonly policy: string;
  /** Requests per minute, >= 1. */
  readonly perMinute: number;
  readonly take: TakeAllowance;
  /** Requests taken from the bucket at a time, >= 1. */
  readonly chunk?: number;
  readonly maxCallers?: number;
}

const MINUTE_MS = 60_000;
const DEFAULT_MAX_CALLERS = 20_000;
/** Sums of many tokens end this close to whole ones. */
const ROUNDING = 1e-6;

/** Unused requests already taken, and the state of the bucket at that time. */
interface Chunk {
  left: number;
  takenAtMs: number;
  fullAtMs: number;
}

/**
 * Limits the rate of each caller. A caller's bucket holds a minute's requests when full, and fills evenly. Requests are
 * taken from it in chunks, so that a bucket in a database is queried once for many; the unused rest is lost after a
 * minute.
 */
export function rateLimit({
  policy,
  perMinute,
  take,
  chunk: wanted = 1,
  maxCallers = DEFAULT_MAX_CALLERS,
}: RateLimitOptions): RateLimit {
  const perMs = perMinute / MINUTE_MS;
  const chunks = new LRUCache<string, Chunk>({ max: maxCallers });
  const taking = new Map<string, Promise<number>>();

  const takeMore = async (caller: string, nowMs: number): Promise<number> => {
    const { granted, fullAtMs } = await take(caller, policy, wanted, perMinute, perMs, nowMs);
    chunks.set(caller, { left: granted, takenAtMs: nowMs, fullAtMs });
    return granted;
  };
  /** Concurrent requests wait for the same chunk. */
  const more = (caller: string, nowMs: number): Promise<number> => {
    const begun = taking.get(caller) ?? takeMore(caller, nowMs).finally(() => taking.delete(caller));
    taking.set(caller, begun);
    return begun;
  };
  const inBucket = ({ fullAtMs }: Chunk, nowMs: number): number => perMinute - Math.max(0, fullAtMs - nowMs) * perMs;
  const verdict = (isAllowed: boolean, chunk: Chunk, nowMs: number): RateVerdict => {
    const tokens = Math.min(perMinute, Math.max(0, chunk.left + inBucket(chunk, nowMs)));
    const remaining = Math.floor(tokens + ROUNDING);
    const nextInS = Math.max(1, Math.ceil((remaining + 1 - tokens) / perMs / 1000 - ROUNDING));
    return { isAllowed, remaining, nextInS };
  };

  return async (caller, nowMs) => {
    for (;;) {
      const known = chunks.get(caller);
      const chunk = known && Math.abs(nowMs - known.takenAtMs) < MINUTE_MS ? known : undefined;
      if (chunk && chunk.left >= 1) {
        chunk.left--;
        return verdict(true, chunk, nowMs);
      }
      if (chunk && inBucket(chunk, nowMs) < 1 - ROUNDING) return verdict(false, chunk, nowMs);
      if ((await more(caller, nowMs)) === 0) return verdict(false, chunks.get(caller)!, nowMs);
    }
  };
}
