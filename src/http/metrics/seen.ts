import { monitorEventLoopDelay, performance } from 'node:perf_hooks';
import type { HistogramReading } from '../../basics/histogram.js';
import type { CacheStats } from '../../basics/shared-cache.js';
import type { Metrics } from './metrics.js';

/** Counters of the worker pool. */
export interface WorkStats {
  /** Waiting jobs by priority. */
  readonly waiting: Readonly<Record<string, number>>;
  readonly running: number;
  readonly threads: number;
  /** Ended jobs by outcome: `done`, `failed`, `refused`, `dropped`, `deadline`. */
  readonly ended: Readonly<Record<string, number>>;
  readonly waitedS: HistogramReading;
  readonly workedS: HistogramReading;
}

/** Counters of the scheduler of sources since the start. */
export interface SourceCounts {
  readonly asked: number;
  readonly failed: number;
  /** In its last round: sources that were due, and how long the longest had been [s]. */
  readonly due: number;
  readonly longestOverdueS: number;
}

/** Delivery attempts since the start, by outcome. */
export type DeliveryTally = Readonly<Record<'delivered' | 'failed' | 'switched-off' | 'given-up', number>>;

export interface DatabaseStats {
  readonly fileBytes?: number;
  readonly walBytes?: number;
  readonly diskFreeBytes?: number;
}

/** Counters to read. Missing ones are left out of the metrics. */
export interface Seen {
  readonly caches?: Readonly<Record<string, () => CacheStats>>;
  readonly work?: () => WorkStats;
  readonly sources?: SourceCounts;
  readonly deliveries?: DeliveryTally;
  /** Messages waiting to be sent, counted up to a bound. */
  readonly messagesWaiting?: () => Promise<number>;
  readonly database?: () => DatabaseStats;
  readonly isWriteFailing?: () => Promise<boolean>;
  readonly openConnections?: () => Promise<number>;
}

const LOOP_RESOLUTION_MS = 20;
const NS_PER_S = 1e9;

/** Adds all metrics of the service. @returns A function that stops watching the event loop. */
export function watch(metrics: Metrics, seen: Seen, version: string): () => void {
  const { gauge, counter, histogram } = metrics;
  const by = (label: string, values: Readonly<Record<string, number>> | undefined) =>
    values && Object.entries(values).map(([name, value]) => ({ labels: { [label]: name }, value }));
  const ofCaches = (field: keyof CacheStats) => () =>
    Object.entries(seen.caches ?? {}).map(([cache, stats]) => ({ labels: { cache }, value: stats()[field] }));

  counter('forecaster_cache_hits_total', 'Questions that a cache answered.', ofCaches('hits'));
  counter('forecaster_cache_misses_total', 'Questions that a cache could not answer.', ofCaches('misses'));
  gauge('forecaster_cache_bytes', 'Memory that the entries of a cache take.', ofCaches('bytes'));
  gauge('forecaster_cache_entries', 'Entries of a cache.', ofCaches('entries'));

  gauge('forecaster_work_waiting', 'Jobs that wait for a worker.', () => by('priority', seen.work?.().waiting));
  gauge('forecaster_work_running', 'Jobs that a worker has now.', () => seen.work?.().running);
  gauge('forecaster_work_threads', 'Workers of the pool.', () => seen.work?.().threads);
  counter('forecaster_work_ended_total', 'Jobs that have ended, by how.', () => by('outcome', seen.work?.().ended));
  histogram('forecaster_work_wait_seconds', 'Time jobs waited for a worker.', () => seen.work?.().waitedS);
  histogram('forecaster_work_seconds', 'Time jobs took in a worker.', () => seen.work?.().workedS);

  counter('forecaster_sources_asked_total', 'Sources of air that were asked.', () => seen.sources?.asked);
  counter('forecaster_sources_failed_total', 'Sources of air that failed.', () => seen.sources?.failed);
  gauge('forecaster_sources_due', 'Sources that were due in the last round.', () => seen.sources?.due);
  gauge(
    'forecaster_source_overdue_seconds',
    'How long the longest of them had been due.',
    () => seen.sources?.longestOverdueS,
  );
  counter('forecaster_deliveries_total', 'Attempts to deliver a message, by how they ended.', () =>
    by('outcome', seen.deliveries),
  );
  gauge('forecaster_messages_waiting', 'Messages that wait to be delivered, up to 10000.', () =>
    seen.messagesWaiting?.(),
  );

  gauge('forecaster_database_file_bytes', 'Size of the database file.', () => seen.database?.().fileBytes);
  gauge('forecaster_database_wal_bytes', 'Size of its write-ahead log.', () => seen.database?.().walBytes);
  gauge('forecaster_disk_free_bytes', 'Room left on the disk of the database.', () => seen.database?.().diskFreeBytes);
  gauge('forecaster_database_writes_failing', '1 while writes to the database fail.', async () =>
    seen.isWriteFailing ? Number(await seen.isWriteFailing()) : undefined,
  );

  gauge('http_open_connections', 'Connections that are open.', () => seen.openConnections?.());
  const delay = monitorEventLoopDelay({ resolution: LOOP_RESOLUTION_MS });
  delay.enable();
  // A turn that begins on time is recorded as the resolution itself.
  const late = (ns: number): number => Math.max(0, ns / NS_PER_S - LOOP_RESOLUTION_MS / 1000);
  gauge('nodejs_eventloop_lag_p50_seconds', 'Delay of the event loop since the last scrape, half below.', () =>
    late(delay.percentile(50)),
  );
  gauge('nodejs_eventloop_lag_p99_seconds', 'The same, 99 of 100 below.', () => late(delay.percentile(99)));
  gauge('nodejs_eventloop_lag_max_seconds', 'The same, the longest.', () => {
    const max = late(delay.max);
    delay.reset();
    return max;
  });
  gauge('process_resident_memory_bytes', 'Memory of the process.', () => process.memoryUsage.rss());
  gauge('nodejs_heap_size_used_bytes', 'Memory that its objects take.', () => process.memoryUsage().heapUsed);
  counter('process_cpu_seconds_total', 'CPU time of the process.', () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1e6;
  });
  gauge('process_start_time_seconds', 'When the process was started.', () => performance.timeOrigin / 1000);
  gauge('forecaster_build_info', '1, with the version of the service and of Node.js.', () => [
    { labels: { version, node: process.version }, value: 1 },
  ]);
  return () => delay.disable();
}
