import type { JobKind } from './jobs.js';

/** More threads gain nothing: each takes 60 MB. */
export const MAX_DEFAULT_THREADS = 8;
/**
 * A single thread would let one owner's long question block all others; the second starts only for concurrent
 * questions.
 */
export const MIN_DEFAULT_THREADS = 2;
/** Questions waiting at most. */
export const MAX_WAITING = 400;
/** Memory of the waiting questions' temperatures at most [bytes]. */
export const MAX_WAITING_BYTES = 128 * 1024 * 1024;
/** Time for a question, waiting and working [ms]: ten seconds, more for kinds that take seconds alone. */
export const DEADLINE_MS: Readonly<Record<JobKind, number>> = {
  forecast: 10_000,
  growing: 10_000,
  windows: 10_000,
  season: 20_000,
  plan: 20_000,
  soil: 30_000,
};
/** Deadlines that late work may run on before it is stopped. */
export const GRACE_DEADLINES = 2;
/** Background work waits behind people's questions [ms]. */
export const BACKGROUND_DEADLINE_MS = 10 * 60_000;
export const MAX_RETRY_AFTER_S = 60;
/** Weight of the latest job in the estimate of job durations. */
export const SMOOTHING = 0.1;
