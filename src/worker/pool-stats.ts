import { type HistogramReading, histogram } from '../basics/histogram.js';
import type { PastSoilCache } from './past-soil-cache.js';

/** Counts of a pool since its start, and its present state, for monitoring. */
export interface PoolStats extends PoolCounts {
  readonly threads: number;
  readonly maxThreads: number;
  readonly working: number;
  readonly waitingPeople: number;
  readonly waitingBackground: number;
  readonly waitingBytes: number;
  readonly pastSoil: ReturnType<PastSoilCache['stats']>;
}

/** Outcomes of jobs. */
interface Ends {
  /** Answered, or refused by the work itself. */
  readonly done: number;
  /** Refused because the queue was full. */
  readonly refused: number;
  /** Removed from the queue after all callers had left. */
  readonly dropped: number;
  /** Stopped at work after all callers had left. */
  readonly stopped: number;
  /** Lost because their thread ended. */
  readonly crashed: number;
  /** Callers that reached their deadline. */
  readonly late: number;
  /** Callers that joined another's equal question. */
  readonly shared: number;
}

interface PoolCounts extends Ends {
  /** Time from the question to the start of the work [s]. */
  readonly waitedS: HistogramReading;
  /** Duration of the work [s]. */
  readonly workedS: HistogramReading;
}

/** Counters of a pool. */
export function poolCounters() {
  const ends: { -readonly [Name in keyof Ends]: number } = {
    done: 0,
    refused: 0,
    dropped: 0,
    stopped: 0,
    crashed: 0,
    late: 0,
    shared: 0,
  };
  const [waited, worked] = [histogram(), histogram()];
  return {
    add: (end: keyof Ends): void => void ends[end]++,
    addWait: (ms: number): void => waited.observe(ms / 1000),
    addWork: (ms: number): void => worked.observe(ms / 1000),
    all: (): PoolCounts => ({ ...ends, waitedS: waited.read(), workedS: worked.read() }),
  };
}
