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
  readonly waitedS: Times;
  /** How long they were worked for [s]. */
  readonly workedS: Times;
}

/** Counts of times by size, and their sum. */
export interface Times {
  /** Upper bounds, rising [s]. */
  readonly bounds: readonly number[];
  /** How many were at most each bound. Shape (bounds). */
  readonly upTo: readonly number[];
  readonly count: number;
  readonly sum: number;
}

const BOUNDS_S = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 30];

function times() {
  const upTo = BOUNDS_S.map(() => 0);
  let [count, sum] = [0, 0];
  return {
    add(ms: number): void {
      const seconds = ms / 1000;
      for (let i = BOUNDS_S.length - 1; i >= 0 && seconds <= BOUNDS_S[i]!; i--) upTo[i]!++;
      count++;
      sum += seconds;
    },
    read: (): Times => ({ bounds: BOUNDS_S, upTo: [...upTo], count, sum }),
  };
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
  const [waited, worked] = [times(), times()];
  return {
    add: (end: keyof Ends): void => void ends[end]++,
    addWait: waited.add,
    addWork: worked.add,
    all: (): PoolCounts => ({ ...ends, waitedS: waited.read(), workedS: worked.read() }),
  };
}
