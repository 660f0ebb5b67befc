import type { SeasonWorkPort } from '../garden/sowing/work-port.js';
import type { AskedBy, WorkerPool } from './worker-pool.js';

/** What a pool works out of kept sowings and plans, for one who asks. */
export const workPortOf = (work: WorkerPool, by: AskedBy): SeasonWorkPort => ({
  plan: (question) => work.ask('plan', question, by),
  growing: (question) => work.ask('growing', question, by),
  windows: (question) => work.ask('windows', question, by),
});
