import { Piscina } from 'piscina';
import type { Job, JobDone } from './jobs.js';

/** Worker threads that run one job at a time each. */
export interface Threads {
  /**
   * Rejects when the thread ends before the job is done.
   *
   * @param isOneOfMany More jobs of the caller wait. Such a job takes the idle thread with the fewest jobs done, so
   * that single questions find a thread whose code is compiled.
   */
  run(job: Job, isOneOfMany?: boolean): Promise<JobDone>;
  /** Present number of threads. */
  count(): number;
  close(): Promise<void>;
}

/** An idle thread ends after this time; starting another costs half a second of a processor [ms]. */
export const IDLE_MS = 10 * 60_000;
/** Young generation of a thread [MB]. V8's default of 48 lets a thread grow by another 30 MB and is hardly faster. */
const MAX_YOUNG_MB = 12;
/** Series remembered for each thread, so that the next question about them goes to it. */
const MAX_SERIES_OF_THREAD = 64;

/** The jobs that a thread has done. */
interface Done {
  readonly jobs: number;
  /** Digests of its series, the latest last. */
  readonly series: Set<string>;
}

/** Criteria for the thread of a job. */
interface Wish {
  readonly digests: readonly string[];
  readonly isOneOfMany: boolean;
}

/**
 * A pool of threads by piscina: one from the first job on, which the service warms up at its start; more under
 * load; a new one for each that ends.
 *
 * @param maxThreads Maximum number, >= 1.
 * @param entry      Module that runs in a thread.
 */
export function threads(maxThreads: number, entry: URL): Threads {
  const doneBy = new Map<number, Done>();
  let pool: Piscina<Job, JobDone> | null = null;
  const start = (): Piscina<Job, JobDone> => {
    const created = new Piscina<Job, JobDone>({
      ...loadable(entry),
      minThreads: 1,
      maxThreads,
      idleTimeout: IDLE_MS,
      recordTiming: false,
      resourceLimits: { maxYoungGenerationSizeMb: MAX_YOUNG_MB },
      loadBalancer: (task, workers) => {
        const { digests, isOneOfMany } = task[Piscina.queueOptionsSymbol as keyof typeof task] as unknown as Wish;
        const jobsOf = ({ id }: { id: number }): number => doneBy.get(id)?.jobs ?? 0;
        const idle = workers
          .filter(({ currentUsage }) => currentUsage === 0)
          .sort((a, b) => (isOneOfMany ? jobsOf(a) - jobsOf(b) : jobsOf(b) - jobsOf(a)));
        // A thread that has the question's series cached comes first.
        const has = ({ id }: { id: number }): boolean => digests.some((digest) => doneBy.get(id)?.series.has(digest));
        return (isOneOfMany ? undefined : idle.find(has)) ?? idle[0] ?? null;
      },
    });
    // An idle thread that ends is replaced and needs no report; a job's own promise rejects.
    created.on('error', () => {});
    created.on('workerDestroy', ({ id }: { id: number }) => {
      doneBy.delete(id);
      queueMicrotask(() => {
        if (pool === created && created.threads.length === 0) abandon(created);
      });
    });
    return created;
  };
  /** Drops a pool whose threads end as soon as they start, because its jobs would wait for ever. */
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

/** Built code loads directly; TypeScript, under a test runner, first needs a loader in the new thread. */
const loadable = (entry: URL): { filename: string; workerData?: { entry: string } } =>
  entry.href.endsWith('.ts')
    ? { filename: new URL('./from-source.mjs', import.meta.url).href, workerData: { entry: entry.href } }
    : { filename: entry.href };
