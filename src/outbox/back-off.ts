const SECOND_MS = 1000;
const MINUTE_MS = 60 * SECOND_MS;
const HOUR_MS = 60 * MINUTE_MS;

/** Waits after the first failure, the second and so on, over three days in all: the schedule that Standard Webhooks gives. */
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
/** Up to so much longer, by chance, lest many come back at once. */
const MAX_JITTER = 0.2;
/** Whoever asks to be left alone for longer is asked again all the same. */
const MAX_WAIT_MS = 24 * HOUR_MS;

/**
 * How long to wait until a message is sent again [ms].
 *
 * @param failures     How often it has failed, this time included; from 1 on.
 * @param jitter       From 0 to below 1.
 * @param retryAfterMs How long the receiver asks to be left alone.
 * @returns null: it has failed often enough.
 */
export function backOffMs(failures: number, jitter: number, retryAfterMs = 0): number | null {
  const waitMs = WAITS_MS[failures - 1];
  if (waitMs === undefined) return null;
  return Math.max(waitMs * (1 + MAX_JITTER * jitter), Math.min(retryAfterMs, MAX_WAIT_MS));
}
