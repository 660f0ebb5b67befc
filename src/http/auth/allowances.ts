import type { TakeAllowance } from '../../garden/store/allowance.js';

const DEFAULT_MAX_BUCKETS = 100_000;
/** Callers beyond those that are remembered share a bucket. */
const OTHERS = 'others';
/** Sums of many tokens end this close to whole ones. */
const ROUNDING = 1e-6;

/**
 * Allowances in memory. A bucket that is full again is forgotten where others need the room, as nothing is lost with it;
 * while none is, callers not seen before share one, so that no flood of callers resets the bucket of another.
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
    // A clock that is set back makes no bucket emptier than empty.
    const lastFullMs = Math.min(Math.max(fullAtMs.get(id) ?? nowMs, nowMs), nowMs + capacity / perMs);
    const there = capacity - (lastFullMs - nowMs) * perMs;
    const granted = Math.max(0, Math.min(wanted, Math.floor(there + ROUNDING)));
    const next = lastFullMs + granted / perMs;
    // Deleted first: the order of a map is that of its insertions, and the first is then the one silent longest.
    fullAtMs.delete(id);
    fullAtMs.set(id, next);
    return { granted, remaining: there - granted, fullAtMs: next };
  };
}

/** A database that does not answer within this time is taken to be away [ms], */
const PATIENCE_MS = 1_000;
/** and is not asked again for so long [ms]. */
const AWAY_MS = 5_000;

/**
 * Allowances that all instances on one database share, as long as it answers; else those in memory.
 *
 * @param take   Takes from the database.
 * @param failed Told when it does not answer.
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

/** What a promise gives, if it does so in time. @throws Error where it does not. */
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
