import type { SeasonAsker } from '../garden/sowing/ask.js';
import type { AskedBy, WorkerPool } from './worker-pool.js';

/** What a pool works out of kept sowings and plans, for one who asks. */
export const askerOf = (work: WorkerPool, by: AskedBy): SeasonAsker => ({
  plan: (question) => work.ask('plan', question, by),
  growing: (question) => work.ask('growing', question, by),
  windows: (question) => work.ask('windows', question, by),
});
