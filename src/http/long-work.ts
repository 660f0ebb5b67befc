import { Worker } from 'node:worker_threads';
import type { Forecast } from '../answers/forecast.js';
import type { Question } from '../answers/question.js';
import type { SoilQuestion, SoilTemperatures } from '../answers/soil-temperatures.js';
import type { SowingWindows, WindowQuestion } from '../answers/sowing-windows.js';
import { type ErrorCode, type Fault, RequestError } from '../basics/errors.js';
import type { SeasonAsker } from '../garden/ask.js';
import type { Growing, GrowingQuestion } from '../garden/growing.js';
import type { GardenPlan } from '../garden/plan.js';
import type { PlanQuestion } from '../garden/plan-question.js';
import type { ReadSeries } from '../readings/read-series.js';

/** The questions that can take seconds, and their answers. */
export interface LongQuestions {
  readonly windows: { readonly question: WindowQuestion; readonly answer: SowingWindows };
  readonly forecast: { readonly question: Question; readonly answer: Forecast };
  readonly growing: { readonly question: GrowingQuestion; readonly answer: Growing };
  readonly plan: { readonly question: PlanQuestion; readonly answer: GardenPlan };
  readonly soil: { readonly question: SoilQuestion; readonly answer: SoilTemperatures };
}
export type Kind = keyof LongQuestions;

/** A question as it can be sent to another thread: its zones by their names. */
export type Sendable<Asked extends Pick<WindowQuestion, 'site' | 'series'>> = Omit<Asked, 'site' | 'series'> & {
  readonly site: Omit<Asked['site'], 'zone'> & { readonly zone: string };
  readonly series: readonly (Omit<ReadSeries, 'zone'> & { readonly zone: string })[];
};

export type Job = {
  [K in Kind]: { readonly id: number; readonly kind: K; readonly question: Sendable<LongQuestions[K]['question']> };
}[Kind];

export type JobDone = { readonly id: number } & (
  | { readonly answer: unknown }
  | { readonly refused: { readonly code: ErrorCode; readonly message: string; readonly faults: readonly Fault[] } }
  | { readonly failed: string }
);

/** What takes seconds, done beside the thread that answers requests. */
export interface LongWork {
  ask<K extends Kind>(kind: K, question: LongQuestions[K]['question']): Promise<LongQuestions[K]['answer']>;
  close(): Promise<void>;
}

/** So many questions may wait for their turn, each with its temperatures in memory. */
const MOST_WAITING = 50;

/** Starts its thread with the first question, and anew should it ever die. */
export function longWork(): LongWork {
  let worker: Worker | null = null;
  let lastId = 0;
  const waiting = new Map<number, { resolve(answer: unknown): void; reject(error: Error): void }>();

  const done = (job: JobDone): void => {
    const one = waiting.get(job.id);
    waiting.delete(job.id);
    if (waiting.size === 0) worker?.unref();
    if ('answer' in job) one?.resolve(job.answer);
    else if ('refused' in job) one?.reject(new RequestError(job.refused.code, job.refused.message, job.refused.faults));
    else one?.reject(new Error(job.failed));
  };
  let isClosed = false;
  const died = (error: Error): void => {
    worker = null;
    for (const { reject } of waiting.values()) reject(error);
    waiting.clear();
  };
  const start = (): Worker => {
    const started = newThread(new URL('./long-worker.js', import.meta.url));
    started.on('message', done);
    started.on('error', died);
    started.on('exit', (code) => {
      if (worker === started) died(new Error(`the thread for long work ended with ${code}`));
    });
    return started;
  };

  return {
    ask<K extends Kind>(kind: K, question: LongQuestions[K]['question']) {
      if (isClosed) return Promise.reject(stopping());
      if (waiting.size >= MOST_WAITING) {
        return Promise.reject(
          new RequestError(
            'busy',
            'Too many questions about past years wait to be worked out. Ask again in a little while.',
          ),
        );
      }
      worker ??= start();
      worker.ref();
      const id = ++lastId;
      return new Promise<LongQuestions[K]['answer']>((resolve, reject) => {
        waiting.set(id, { resolve: resolve as (answer: unknown) => void, reject });
        worker!.postMessage({ id, kind, question: toSend(question) } as unknown as Job);
      });
    },
    async close() {
      isClosed = true;
      const ended = worker;
      // Whoever still waits is told so: nothing else would end their requests.
      died(stopping());
      await ended?.terminate();
    },
  };
}

/** What it works out of kept sowings and plans. */
export const askerOf = (work: LongWork): SeasonAsker => ({
  plan: (question) => work.ask('plan', question),
  growing: (question) => work.ask('growing', question),
  windows: (question) => work.ask('windows', question),
});

const stopping = (): RequestError =>
  new RequestError('busy', 'The service is stopping, and works nothing out any more. Ask again in a little while.');

function toSend<Asked extends Pick<WindowQuestion, 'site' | 'series'>>({ site, series, ...rest }: Asked) {
  return {
    ...rest,
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
