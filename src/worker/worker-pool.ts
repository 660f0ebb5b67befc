import { availableParallelism } from 'node:os';
import { errorFact, RequestError, StoppedError } from '../basics/errors.js';
import { exampleJobs } from './example-jobs.js';
import { type FairQueue, fairQueue } from './fair-queue.js';
import {
  bytesOfQuestion,
  digestOfQuestion,
  type Job,
  type JobDone,
  type JobKind,
  type LongQuestions,
  sendable,
} from './jobs.js';
import { type PastSoilCache, pastSoilCache } from './past-soil-cache.js';
import { type PoolEntry, poolEntry, settle, type Waiter } from './pool-entry.js';
import {
  BACKGROUND_DEADLINE_MS,
  DEADLINE_MS,
  GRACE_DEADLINES,
  MAX_DEFAULT_THREADS,
  MAX_RETRY_AFTER_S,
  MAX_WAITING,
  MAX_WAITING_BYTES,
  MIN_DEFAULT_THREADS,
  SMOOTHING,
} from './pool-limits.js';
import { type PoolStats, poolCounters } from './pool-stats.js';
import { IDLE_MS, threads } from './threads.js';
import { twoCallers } from './two-callers.js';
import { waitForAnswer } from './wait-for-answer.js';

/** The caller of a question. */
export interface AskedBy {
  /** Owner of the garden. */
  readonly owner: string;
  /** Key of the fair queue: an owner, or an address when there are no keys. */
  readonly caller: string;
  /** Aborted when the caller no longer waits. */
  readonly signal?: AbortSignal | undefined;
  /** True for work that nobody waits for; people come first. */
  readonly isBackground?: boolean;
  /**
   * Takes one of the caller's slots before anything is read for the answer. @throws {RequestError} when all are taken.
   */
  takePlace?(): void;
  /**
   * Runs before each question is accepted, and takes a slot too. @throws {RequestError} when the caller is over its
   * limit.
   */
  admit?(): Promise<void>;
}

/** Answers questions that take seconds in worker threads, so that the thread of the server stays free. */
export interface WorkerPool {
  /**
   * @throws {RequestError} as the work itself does; `busy` when the queue is full or the deadline has passed.
   * @throws StoppedError when the caller left before.
   */
  ask<K extends JobKind>(
    kind: K,
    question: LongQuestions[K]['question'],
    by: AskedBy,
  ): Promise<LongQuestions[K]['answer']>;
  /**
   * Starts a thread and runs examples in it, so that the first question finds a thread with compiled code. The results
   * are dropped.
   */
  warmUp(): Promise<void>;
  /** Estimated time until another question would be answered [s], >= 1. */
  waitS(): number;
  stats(): PoolStats;
  close(): Promise<void>;
}

export interface WorkerPoolOptions {
  /** Past soil of another model version is not used. */
  readonly modelVersion: string;
  /** Default: one less than the machine has processors, 2 to 8. */
  readonly threads?: number | undefined;
  readonly pasts?: PastSoilCache;
  readonly deadlineMs?: Readonly<Record<JobKind, number>>;
  readonly maxWaiting?: number;
  readonly maxWaitingBytes?: number;
  /** Module that runs in a thread. */
  readonly entry?: URL;
}

export function workerPool({
  modelVersion,
  threads: maxThreads = Math.min(MAX_DEFAULT_THREADS, Math.max(MIN_DEFAULT_THREADS, availableParallelism() - 1)),
  pasts = pastSoilCache(),
  deadlineMs = DEADLINE_MS,
  maxWaiting = MAX_WAITING,
  maxWaitingBytes = MAX_WAITING_BYTES,
  entry: module = new URL(import.meta.url.endsWith('.ts') ? './worker.ts' : './worker.js', import.meta.url),
}: WorkerPoolOptions): WorkerPool {
  const pool = threads(maxThreads, module);
  const queue: FairQueue<PoolEntry> = fairQueue();
  const entries = new Map<string, PoolEntry>();
  const working = new Set<PoolEntry>();
  const counters = poolCounters();
  const callers = twoCallers(IDLE_MS);
  /** Ratio of job durations to their estimates. */
  let slowness = 1;
  let isClosed = false;

  /** With several threads, neither one owner nor background work may occupy all of them. */
  const mayServe = (caller: string, isBackground: boolean): boolean => {
    const alike = [...working].filter((one) => (isBackground ? one.isBackground : one.caller === caller));
    return alike.length < Math.max(1, maxThreads - 1);
  };

  const waitS = (): number => {
    const ahead = queue.cost() + [...working].reduce((sum, { cost }) => sum + cost, 0);
    return Math.min(MAX_RETRY_AFTER_S, Math.max(1, Math.ceil((ahead * slowness) / maxThreads / 1000)));
  };

  const dispatch = (): void => {
    while (!isClosed && working.size < maxThreads) {
      const next = queue.next(mayServe)?.item;
      if (!next) break;
      void start(next);
    }
    startSpare();
  };

  /** With two active callers, keeps a thread ready for one while the other occupies the rest. */
  const startSpare = (): void => {
    const isNeeded = working.size < maxThreads && working.size >= pool.count() && callers.areActive(performance.now());
    // All threads are busy, so this job starts another. If that fails, the next question reports it.
    if (!isClosed && isNeeded) void pool.run(exampleJobs(modelVersion)[0]!).catch(() => {});
  };

  const start = async (entry: PoolEntry): Promise<void> => {
    const startedMs = performance.now();
    entry.state = 'working';
    working.add(entry);
    counters.addWait(startedMs - entry.askedMs);
    const done = await pool.run(jobOf(entry), hasMore(entry)).catch((error: Error) => error);
    const tookMs = performance.now() - startedMs;
    working.delete(entry);
    counters.addWork(tookMs);
    if (!(done instanceof Error) && 'answer' in done) {
      slowness = (1 - SMOOTHING) * slowness + SMOOTHING * (tookMs / entry.cost);
    }
    end(entry, done);
    dispatch();
  };

  /** True when more of the caller's questions wait, or for background work, which nobody waits for. */
  const hasMore = ({ caller, isBackground }: PoolEntry): boolean =>
    isBackground || [...entries.values()].some((one) => one.state === 'waiting' && one.caller === caller);

  const jobOf = ({ kind, question, stop, owner, pastKey }: PoolEntry): Job => {
    const bytes = pastKey === undefined ? undefined : pasts.peek(owner, pastKey);
    const remembered = pastKey !== undefined && bytes ? [{ key: pastKey, bytes }] : [];
    return { kind, question: sendable(question), modelVersion, stop, remembered } as unknown as Job;
  };

  /** Passes the result to all callers that still wait. */
  const end = (entry: PoolEntry, done: JobDone | Error): void => {
    entry.state = 'ended';
    if (entries.get(entry.key) === entry) entries.delete(entry.key);
    if (done instanceof Error) counters.add('crashed');
    else for (const { key, bytes } of done.made) pasts.keep(entry.owner, key, bytes);
    if (!(done instanceof Error)) counters.add('stopped' in done ? 'stopped' : 'done');
    settle(entry, done);
  };

  /** Ends the work that no caller waits for any more. */
  const leave = (entry: PoolEntry, waiter: Waiter): void => {
    entry.waiters.delete(waiter);
    if (entry.waiters.size > 0 || entry.state === 'ended') return;
    if (entries.get(entry.key) === entry) entries.delete(entry.key);
    if (entry.state === 'working') {
      Atomics.store(new Int32Array(entry.stop), 0, 1);
      return;
    }
    queue.remove(entry);
    entry.state = 'ended';
    counters.add('dropped');
  };

  const waitFor = (entry: PoolEntry, { signal, isBackground }: AskedBy): Promise<unknown> => {
    const deadline = isBackground ? BACKGROUND_DEADLINE_MS : deadlineMs[entry.kind];
    const late = (): Error => {
      counters.add('late');
      return tooLate(waitS());
    };
    return waitForAnswer(entry, { signal, deadlineMs: deadline, graceMs: GRACE_DEADLINES * deadline, late, leave });
  };

  const enqueue = (entry: PoolEntry): void => {
    const { caller: owner, cost, bytes, isBackground } = entry;
    entry.state = 'waiting';
    queue.add({ item: entry, owner, cost, bytes, isBackground });
  };

  /** Reads past soil before the question is queued, so that no thread waits for the database. */
  const lookUp = async (entry: PoolEntry): Promise<void> => {
    if (entry.pastKey !== undefined) await pasts.find(entry.owner, entry.pastKey);
    if (entry.state !== 'looking-up' || isClosed) return;
    enqueue(entry);
    dispatch();
  };

  /** Includes questions still reading past soil, which hold their temperatures too. */
  const waitingBytes = (): number =>
    [...entries.values()].reduce((sum, { state, bytes }) => sum + (state === 'looking-up' ? bytes : 0), queue.bytes());

  const isFull = (bytes: number): boolean => {
    const waiting = [...entries.values()].filter(({ state }) => state !== 'working').length;
    return waiting >= maxWaiting || (waiting > 0 && waitingBytes() + bytes > maxWaitingBytes);
  };

  return {
    async ask(kind, question, by) {
      await by.admit?.();
      if (isClosed) throw stopping();
      if (by.signal?.aborted) throw new StoppedError();
      if (!by.isBackground) callers.sawQuestion(by.caller, performance.now());
      const sent = sendable(question);
      const key = `${by.owner} ${digestOfQuestion(kind, sent as never)}`;
      const shared = entries.get(key);
      const isBackground = by.isBackground ?? false;
      if (shared) {
        counters.add('shared');
        // A person now waits for what began as background work.
        if (shared.isBackground && !isBackground) {
          const isWaiting = queue.remove(shared);
          Object.assign(shared, { isBackground, caller: by.caller });
          if (isWaiting) enqueue(shared);
        }
        return (await waitFor(shared, by)) as never;
      }
      const bytes = bytesOfQuestion(question);
      if (isFull(bytes)) {
        counters.add('refused');
        throw tooMuch(waitS());
      }
      const { owner, caller } = by;
      const asked = { key, owner, caller, isBackground, askedMs: performance.now() };
      const entry = poolEntry(kind, question, asked, modelVersion);
      entries.set(key, entry);
      const answered = waitFor(entry, by);
      void lookUp(entry);
      return (await answered) as never;
    },
    async warmUp() {
      for (const job of exampleJobs(modelVersion)) {
        const done = await pool.run(job);
        if (!('answer' in done)) throw new Error('failed' in done ? done.failed : 'an example was not answered');
      }
    },
    waitS,
    stats: () => ({
      ...counters.all(),
      threads: pool.count(),
      maxThreads,
      working: working.size,
      waitingPeople: queue.size(false),
      waitingBackground: queue.size(true),
      waitingBytes: waitingBytes(),
      pastSoil: pasts.stats(),
    }),
    async close() {
      isClosed = true;
      // Nothing else would end the waiting requests.
      for (const { waiters } of entries.values()) {
        for (const waiter of waiters) waiter.reject(stopping());
        waiters.clear();
      }
      entries.clear();
      await pool.close();
    },
  };
}

const tooMuch = (retryAfterS: number): RequestError =>
  new RequestError('busy', errorFact('busy.queue'), [], { retryAfterS });

const tooLate = (retryAfterS: number): RequestError =>
  new RequestError('busy', errorFact('busy.deadline'), [], { retryAfterS });

const stopping = (): RequestError => new RequestError('stopping', errorFact('stopping.worker'));
