import { workerData } from 'node:worker_threads';
import { register } from 'tsx/esm/api';

/** Runs a worker from its TypeScript source, as tests and `npm run dev` do: a new thread has no loader for it. */
register();
const { default: work } = await import(workerData.entry);
export default work;
