/** A histogram's counts in the form that Prometheus reads. */
export interface HistogramReading {
  /** Upper bounds, ascending. */
  readonly bounds: readonly number[];
  /** Number of values at or below each bound. Shape (bounds). */
  readonly upTo: readonly number[];
  readonly count: number;
  readonly sum: number;
}

export interface Histogram {
  observe(value: number): void;
  read(): HistogramReading;
}

/** Upper bounds from answers of a few milliseconds to work of many seconds [s]. */
const SECONDS_BOUNDS: readonly number[] = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 30];

/** Counts values by size, in constant memory. */
export function histogram(bounds: readonly number[] = SECONDS_BOUNDS): Histogram {
  const upTo = bounds.map(() => 0);
  let [count, sum] = [0, 0];
  return {
    observe(value) {
      for (let i = bounds.length - 1; i >= 0 && value <= bounds[i]!; i--) upTo[i]!++;
      count++;
      sum += value;
    },
    read: () => ({ bounds, upTo: [...upTo], count, sum }),
  };
}
