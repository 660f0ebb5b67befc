import { workerData } from 'node:worker_threads';
import { register } from 'tsx/esm/api';

/** Runs a worker from its TypeScript source for tests and `npm run dev`, because a new thread has no loader of its own. */
register();
const { default: work } = await import(workerData.entry);
export default work;
