import { Piscina } from 'piscina';
import type { Job, JobDone } from './jobs.js';

/** Threads that each do one job at a time. */
export interface Threads {
  /** Rejects where the thread ended before the job was done. */
  run(job: Job): Promise<JobDone>;
  /** How many there are now. */
  count(): number;
  close(): Promise<void>;
}

/** A thread without work is kept so long: the next one costs half a second of a processor [ms]. */
const IDLE_MS = 60_000;
/** Room of a thread for what is seldom needed for long [MB]: with the 48 of V8 a thread grows by 30 MB more, and is hardly faster. */
const MAX_YOUNG_MB = 12;
/** So many series are remembered of a thread, to send their next question to it. */
const MAX_SERIES_OF_THREAD = 64;

/**
 * Threads, by piscina: one from the first job on, which the service warms up at its start; more while there is work for
 * them, and a new one for each that ends.
 *
 * @param most  How many at most, >= 1.
 * @param entry The module that does the work.
 */
export function threads(most: number, entry: URL): Threads {
  /** Which series a thread has had, by their digests, the latest last. */
  const seriesOf = new Map<number, Set<string>>();
  let pool: Piscina<Job, JobDone> | null = null;
  const start = (): Piscina<Job, JobDone> => {
    const created = new Piscina<Job, JobDone>({
      ...loadable(entry),
      minThreads: 1,
      maxThreads: most,
      idleTimeout: IDLE_MS,
      recordTiming: false,
      resourceLimits: { maxYoungGenerationSizeMb: MAX_YOUNG_MB },
      // A thread that has the question's series goes before others, where it has nothing else to do.
      loadBalancer: (task, workers) => {
        const idle = workers.filter(({ currentUsage }) => currentUsage === 0);
        const { digests } = task[Piscina.queueOptionsSymbol as keyof typeof task] as unknown as { digests: string[] };
        const has = ({ id }: { id: number }): boolean => digests.some((digest) => seriesOf.get(id)?.has(digest));
        return idle.find(has) ?? idle[0] ?? null;
      },
    });
    // Without work at hand nobody has to be told: a thread that ends is replaced.
    created.on('error', () => {});
    created.on('workerDestroy', ({ id }: { id: number }) => {
      seriesOf.delete(id);
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
    async run(job) {
      const digests = job.question.series.map(({ digest }) => digest);
      pool ??= start();
      const done = await pool.run({ ...job, [Piscina.queueOptionsSymbol]: { digests } });
      const had = seriesOf.get(done.threadId) ?? new Set();
      for (const digest of digests) {
        had.delete(digest);
        had.add(digest);
        if (had.size > MAX_SERIES_OF_THREAD) had.delete(had.values().next().value!);
      }
      seriesOf.set(done.threadId, had);
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
