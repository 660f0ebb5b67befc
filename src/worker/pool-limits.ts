import type { JobKind } from './jobs.js';

/** More threads than this help nobody: each takes 60 MB. */
export const MAX_DEFAULT_THREADS = 8;
/** With fewer, one owner's long question holds up everybody else's; the second starts only where two are asked at once. */
export const MIN_DEFAULT_THREADS = 2;
/** So many questions may wait, */
export const MAX_WAITING = 400;
/** and so much of their temperatures in memory [bytes]. */
export const MAX_WAITING_BYTES = 128 * 1024 * 1024;
/** So long a question may take, waiting and working [ms]: ten seconds, more for what takes seconds alone. */
export const DEADLINE_MS: Readonly<Record<JobKind, number>> = {
  forecast: 10_000,
  growing: 10_000,
  windows: 10_000,
  plan: 20_000,
  soil: 30_000,
};
/** Work that is late goes on for so many deadlines more before it is ended. */
export const GRACE_DEADLINES = 2;
/** Background work waits until people are served [ms]. */
export const BACKGROUND_DEADLINE_MS = 10 * 60_000;
export const MAX_RETRY_AFTER_S = 60;
/** How much the latest job counts for how long jobs take. */
export const SMOOTHING = 0.1;
