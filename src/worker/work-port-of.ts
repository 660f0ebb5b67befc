import type { SeasonWorkPort } from '../garden/sowing/work-port.js';
import type { AskedBy, WorkerPool } from './worker-pool.js';

/** The pool as the port through which stored sowings and plans are computed, for one caller. */
export const workPortOf = (work: WorkerPool, by: AskedBy): SeasonWorkPort => ({
  plan: (question) => work.ask('plan', question, by),
  growing: (question) => work.ask('growing', question, by),
  windows: (question) => work.ask('windows', question, by),
});
