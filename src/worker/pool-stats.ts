import { type HistogramReading, histogram } from '../basics/histogram.js';
import type { PastSoilCache } from './past-soil-cache.js';

/** What a pool has done so far, and what it is doing, for whoever watches the service. */
export interface PoolStats extends PoolCounts {
  readonly threads: number;
  readonly maxThreads: number;
  readonly working: number;
  readonly waitingPeople: number;
  readonly waitingBackground: number;
  readonly waitingBytes: number;
  readonly pastSoil: ReturnType<PastSoilCache['stats']>;
}

/** How jobs ended. */
interface Ends {
  /** Answered, or refused by the work itself. */
  readonly done: number;
  /** Not taken on, as too much waited. */
  readonly refused: number;
  /** Left the queue, as nobody asked any more. */
  readonly dropped: number;
  /** Ended at work, as nobody asked any more. */
  readonly stopped: number;
  /** Their thread ended. */
  readonly crashed: number;
  /** Askers who waited until their deadline. */
  readonly late: number;
  /** Askers who joined others of the same question. */
  readonly shared: number;
}

interface PoolCounts extends Ends {
  /** How long jobs waited, from the question to the start of the work [s]. */
  readonly waitedS: HistogramReading;
  /** How long they were worked for [s]. */
  readonly workedS: HistogramReading;
}

/** Counts what a pool does. */
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
