/** What a caller may still ask. */
export interface Allowance {
  readonly isAllowed: boolean;
  /** Requests that may follow at once. */
  readonly remaining: number;
  /** Until the whole allowance is there again [s]. */
  readonly fullInS: number;
  /** Until one more request is allowed [s]; 0: it is. */
  readonly nextInS: number;
}

export type RateLimit = (caller: string, nowMs: number) => Allowance;

const MINUTE_MS = 60_000;

/**
 * Limits how often each caller may ask. A caller's bucket holds a minute's requests when full, and fills evenly; of too
 * many callers the one that has been silent longest is forgotten, so that memory has a bound.
 *
 * @param perMinute   Requests a minute, >= 1.
 * @param mostCallers How many callers are remembered.
 */
export function rateLimit(perMinute: number, mostCallers = 10_000): RateLimit {
  const perMs = perMinute / MINUTE_MS;
  const buckets = new Map<string, { requests: number; atMs: number }>();
  return (caller, nowMs) => {
    const last = buckets.get(caller) ?? { requests: perMinute, atMs: nowMs };
    const filled = Math.min(perMinute, last.requests + Math.max(0, nowMs - last.atMs) * perMs);
    const isAllowed = filled >= 1;
    const requests = isAllowed ? filled - 1 : filled;
    // Deleted first: the order of a map is that of its insertions, and the first is then the one silent longest.
    buckets.delete(caller);
    buckets.set(caller, { requests, atMs: nowMs });
    if (buckets.size > mostCallers) buckets.delete(buckets.keys().next().value!);
    return {
      isAllowed,
      remaining: Math.floor(requests),
      fullInS: Math.ceil((perMinute - requests) / perMs / 1000),
      nextInS: Math.ceil(Math.max(0, 1 - requests) / perMs / 1000),
    };
  };
}
