import { Piscina } from 'piscina';
import type { Job, JobDone } from './jobs.js';

/** Threads that each do one job at a time. */
export interface Threads {
  /**
   * Rejects where the thread ended before the job was done.
   *
   * @param isOneOfMany More like it wait: it takes the idle thread that has done least, so that those who ask one thing find
   *   one whose code is compiled.
   */
  run(job: Job, isOneOfMany?: boolean): Promise<JobDone>;
  /** How many there are now. */
  count(): number;
  close(): Promise<void>;
}

/** A thread without work is kept so long: the next one costs half a second of a processor [ms]. */
export const IDLE_MS = 10 * 60_000;
/** Room of a thread for what is seldom needed for long [MB]: with the 48 of V8 a thread grows by 30 MB more, and is hardly faster. */
const MAX_YOUNG_MB = 12;
/** So many series are remembered of a thread, to send their next question to it. */
const MAX_SERIES_OF_THREAD = 64;

/** What a thread has done. */
interface Done {
  readonly jobs: number;
  /** The series that it has had, by their digests, the latest last. */
  readonly series: Set<string>;
}

/** Where a job should go. */
interface Wish {
  readonly digests: readonly string[];
  readonly isOneOfMany: boolean;
}

/**
 * Threads, by piscina: one from the first job on, which the service warms up at its start; more while there is work for
 * them, and a new one for each that ends.
 *
 * @param most  How many at most, >= 1.
 * @param entry The module that does the work.
 */
export function threads(most: number, entry: URL): Threads {
  const doneBy = new Map<number, Done>();
  let pool: Piscina<Job, JobDone> | null = null;
  const start = (): Piscina<Job, JobDone> => {
    const created = new Piscina<Job, JobDone>({
      ...loadable(entry),
      minThreads: 1,
      maxThreads: most,
      idleTimeout: IDLE_MS,
      recordTiming: false,
      resourceLimits: { maxYoungGenerationSizeMb: MAX_YOUNG_MB },
      loadBalancer: (task, workers) => {
        const { digests, isOneOfMany } = task[Piscina.queueOptionsSymbol as keyof typeof task] as unknown as Wish;
        const jobsOf = ({ id }: { id: number }): number => doneBy.get(id)?.jobs ?? 0;
        const idle = workers
          .filter(({ currentUsage }) => currentUsage === 0)
          .sort((a, b) => (isOneOfMany ? jobsOf(a) - jobsOf(b) : jobsOf(b) - jobsOf(a)));
        // A thread that has the question's series goes before others.
        const has = ({ id }: { id: number }): boolean => digests.some((digest) => doneBy.get(id)?.series.has(digest));
        return (isOneOfMany ? undefined : idle.find(has)) ?? idle[0] ?? null;
      },
    });
    // Without work at hand nobody has to be told: a thread that ends is replaced.
    created.on('error', () => {});
    created.on('workerDestroy', ({ id }: { id: number }) => {
      doneBy.delete(id);
      queueMicrotask(() => {
        if (pool === created && created.threads.length === 0) abandon(created);
      });
    });
    return created;
  };
  /** Its threads end as soon as they start, so that what waits for one would wait for ever. */
  const abandon = (broken: Piscina<Job, JobDone>): void => {
    pool = null;
    void broken.destroy();
  };
  return {
    async run(job, isOneOfMany = false) {
      const digests = job.question.series.map(({ digest }) => digest);
      pool ??= start();
      const wish: Wish = { digests, isOneOfMany };
      const done = await pool.run({ ...job, [Piscina.queueOptionsSymbol]: wish });
      const { jobs, series } = doneBy.get(done.threadId) ?? { jobs: 0, series: new Set() };
      for (const digest of digests) {
        series.delete(digest);
        series.add(digest);
        if (series.size > MAX_SERIES_OF_THREAD) series.delete(series.values().next().value!);
      }
      doneBy.set(done.threadId, { jobs: jobs + 1, series });
      return done;
    },
    count: () => pool?.threads.length ?? 0,
    async close() {
      const ended = pool;
      pool = null;
      await ended?.destroy();
    },
  };
}

/** Built code starts as it is; sources, as a test runner reads them, need their loader in the new thread first. */
const loadable = (entry: URL): { filename: string; workerData?: { entry: string } } =>
  entry.href.endsWith('.ts')
    ? { filename: new URL('./from-source.mjs', import.meta.url).href, workerData: { entry: entry.href } }
    : { filename: entry.href };
