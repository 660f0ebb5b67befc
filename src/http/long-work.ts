import { Worker } from 'node:worker_threads';
import type { SowingWindows, WindowQuestion } from '../answers/sowing-windows.js';
import { type ErrorCode, type Fault, RequestError } from '../basics/errors.js';
import type { ReadSeries } from '../readings/read-series.js';

/** A question as it can be sent to another thread: its zones by their names. */
export type Sendable = Omit<WindowQuestion, 'site' | 'series'> & {
  readonly site: Omit<WindowQuestion['site'], 'zone'> & { readonly zone: string };
  readonly series: readonly (Omit<ReadSeries, 'zone'> & { readonly zone: string })[];
};

export interface Job {
  readonly id: number;
  readonly question: Sendable;
}

export type JobDone = { readonly id: number } & (
  | { readonly found: SowingWindows }
  | { readonly refused: { readonly code: ErrorCode; readonly message: string; readonly faults: readonly Fault[] } }
  | { readonly failed: string }
);

/** What takes seconds, done beside the thread that answers requests. */
export interface LongWork {
  windows(question: WindowQuestion): Promise<SowingWindows>;
  close(): Promise<void>;
}

/** Starts its thread with the first question, and anew should it ever die. */
export function longWork(): LongWork {
  let worker: Worker | null = null;
  let lastId = 0;
  const waiting = new Map<number, { resolve(found: SowingWindows): void; reject(error: Error): void }>();

  const done = (job: JobDone): void => {
    const one = waiting.get(job.id);
    waiting.delete(job.id);
    if (waiting.size === 0) worker?.unref();
    if ('found' in job) one?.resolve(job.found);
    else if ('refused' in job) one?.reject(new RequestError(job.refused.code, job.refused.message, job.refused.faults));
    else one?.reject(new Error(job.failed));
  };
  const died = (error: Error): void => {
    worker = null;
    for (const { reject } of waiting.values()) reject(error);
    waiting.clear();
  };
  const start = (): Worker => {
    const started = newThread(new URL('./windows-worker.js', import.meta.url));
    started.on('message', done);
    started.on('error', died);
    started.on('exit', (code) => {
      if (worker === started) died(new Error(`the thread for long work ended with ${code}`));
    });
    return started;
  };

  return {
    windows(question) {
      worker ??= start();
      worker.ref();
      const id = ++lastId;
      return new Promise((resolve, reject) => {
        waiting.set(id, { resolve, reject });
        worker!.postMessage({ id, question: toSend(question) } satisfies Job);
      });
    },
    async close() {
      const ended = worker;
      worker = null;
      await ended?.terminate();
    },
  };
}

function toSend({ site, series, ...question }: WindowQuestion): Sendable {
  return {
    ...question,
    site: { ...site, zone: site.zone.name },
    series: series.map((one) => ({ ...one, zone: one.zone.name })),
  };
}

/** Built code starts as it is; sources, as a test runner reads them, need their loader in the new thread first. */
function newThread(url: URL): Worker {
  if (!import.meta.url.endsWith('.ts')) return new Worker(url);
  const loader = ['tsx/esm/api', url.href.replace(/js$/, 'ts')].map((one) => `await import(${JSON.stringify(one)})`);
  return new Worker(`(async () => { (${loader[0]}).register(); ${loader[1]}; })()`, { eval: true });
}
