const SECOND_MS = 1000;
const MINUTE_MS = 60 * SECOND_MS;
const HOUR_MS = 60 * MINUTE_MS;

/** Waits after each failure, over three days in all: the schedule of Standard Webhooks. */
const WAITS_MS = [
  5 * SECOND_MS,
  5 * MINUTE_MS,
  30 * MINUTE_MS,
  2 * HOUR_MS,
  5 * HOUR_MS,
  10 * HOUR_MS,
  14 * HOUR_MS,
  20 * HOUR_MS,
  24 * HOUR_MS,
];
/** Largest random extension of a wait, as a share of it, so that retries do not come all at once. */
const MAX_JITTER = 0.2;
/** Bound on a receiver's `Retry-After`. */
const MAX_WAIT_MS = 24 * HOUR_MS;

/**
 * Time until the next attempt at a message [ms].
 *
 * @param failures     Failures so far, this one included; from 1 on.
 * @param jitter       From 0 to below 1.
 * @param retryAfterMs The receiver's `Retry-After` [ms].
 * @returns null: no more attempts.
 */
export function backOffMs(failures: number, jitter: number, retryAfterMs = 0): number | null {
  const waitMs = WAITS_MS[failures - 1];
  if (waitMs === undefined) return null;
  return Math.max(waitMs * (1 + MAX_JITTER * jitter), Math.min(retryAfterMs, MAX_WAIT_MS));
}
