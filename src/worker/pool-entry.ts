import { RequestError, StoppedError } from '../basics/errors.js';
import { bytesOfQuestion, costOf, type JobDone, type JobKind, type LongQuestions } from './jobs.js';
import { neededPastSoil } from './past-soil-key.js';

/** A caller who waits for an answer. */
export interface Waiter {
  resolve(answer: unknown): void;
  reject(error: Error): void;
}

/** A question in the pool with all its callers. */
export interface PoolEntry {
  readonly kind: JobKind;
  readonly question: LongQuestions[JobKind]['question'];
  /** Equal questions of one owner share an entry. */
  readonly key: string;
  readonly owner: string;
  caller: string;
  isBackground: boolean;
  readonly cost: number;
  readonly bytes: number;
  readonly pastKey: string | undefined;
  /** 1 makes the thread stop. */
  readonly stop: SharedArrayBuffer;
  readonly waiters: Set<Waiter>;
  readonly askedMs: number;
  state: 'looking-up' | 'waiting' | 'working' | 'ended';
}

/** The entry of a question that no other caller has asked yet. */
export const poolEntry = (
  kind: JobKind,
  question: LongQuestions[JobKind]['question'],
  by: Pick<PoolEntry, 'key' | 'owner' | 'caller' | 'isBackground' | 'askedMs'>,
  modelVersion: string,
): PoolEntry => ({
  ...by,
  kind,
  question,
  cost: costOf(kind, question),
  bytes: bytesOfQuestion(question),
  pastKey: neededPastSoil({ kind, question } as never, modelVersion),
  stop: new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT),
  waiters: new Set(),
  state: 'looking-up',
});

/** Passes the result of a job to all callers that still wait. */
export function settle({ waiters }: PoolEntry, done: JobDone | Error): void {
  for (const waiter of waiters) {
    if (done instanceof Error) waiter.reject(done);
    else if ('answer' in done) waiter.resolve(done.answer);
    else if ('refused' in done)
      waiter.reject(new RequestError(done.refused.code, done.refused.sentences, done.refused.faults));
    else if ('failed' in done) waiter.reject(new Error(done.failed));
    else waiter.reject(new StoppedError());
  }
  waiters.clear();
}
