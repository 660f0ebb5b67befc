import type { TakeAllowance } from '../../garden/store/allowance.js';

const DEFAULT_MAX_BUCKETS = 100_000;
/** Callers over the limit of buckets share this one. */
const OTHERS = 'others';
/** Sums of many tokens end this close to whole ones. */
const ROUNDING = 1e-6;

/**
 * Allowances in memory. A full bucket is forgotten if others need the room, as nothing is lost with it. If none is
 * full, new callers share one, so that no flood of callers resets the bucket of another.
 */
export function memoryAllowances(maxBuckets = DEFAULT_MAX_BUCKETS): TakeAllowance {
  const fullAtMs = new Map<string, number>();
  const makeRoom = (nowMs: number): boolean => {
    const oldest = fullAtMs.entries().next().value;
    if (fullAtMs.size < maxBuckets || !oldest) return true;
    return oldest[1] <= nowMs && fullAtMs.delete(oldest[0]);
  };
  return async (caller, policy, wanted, capacity, perMs, nowMs) => {
    const own = `${policy} ${caller}`;
    const id = fullAtMs.has(own) || makeRoom(nowMs) ? own : `${policy} ${OTHERS}`;
    // A clock that is set back cannot overdraw a bucket.
    const lastFullMs = Math.min(Math.max(fullAtMs.get(id) ?? nowMs, nowMs), nowMs + capacity / perMs);
    const there = capacity - (lastFullMs - nowMs) * perMs;
    const granted = Math.max(0, Math.min(wanted, Math.floor(there + ROUNDING)));
    const next = lastFullMs + granted / perMs;
    // Delete first: a map keeps the order of insertion, so its first entry is then the least recently used.
    fullAtMs.delete(id);
    fullAtMs.set(id, next);
    return { granted, remaining: there - granted, fullAtMs: next };
  };
}

/** A database that does not answer within this time counts as down [ms]. */
const PATIENCE_MS = 1_000;
/** How long a database that is down is not queried again [ms]. */
const AWAY_MS = 5_000;

/**
 * Allowances shared by all instances on one database while it answers, otherwise those in memory.
 *
 * @param take   Takes from the database.
 * @param failed Receives the error when it does not answer.
 */
export function sharedAllowances(
  take: TakeAllowance,
  failed: (error: unknown) => void,
  local: TakeAllowance = memoryAllowances(),
): TakeAllowance {
  let awayUntilMs = -Infinity;
  return async (...asked) => {
    const nowMs = asked[5];
    if (nowMs < awayUntilMs) return local(...asked);
    try {
      return await within(PATIENCE_MS, take(...asked));
    } catch (error) {
      awayUntilMs = nowMs + AWAY_MS;
      failed(error);
      return local(...asked);
    }
  };
}

/** The value of a promise within a time limit. @throws Error after that. */
async function within<T>(ms: number, promise: Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`no answer within ${ms} ms`)), ms);
  });
  try {
    return await Promise.race([promise, late]);
  } finally {
    clearTimeout(timer);
  }
}
