/** Work that runs at an interval. */
export interface Scheduler {
  /** Starts no more work, aborts the current one, and resolves when it has ended. */
  stop(): Promise<void>;
}

/**
 * Runs work at an interval. A run that is still under way is never joined by a second one.
 *
 * @param everyMs Interval [ms].
 * @param round   The work; its signal is aborted when the scheduler stops.
 * @param failed  Called with the error of a failed run; the next one runs all the same.
 */
export function scheduler(
  everyMs: number,
  round: (signal: AbortSignal) => Promise<unknown>,
  failed: (error: unknown) => void,
): Scheduler {
  const stopping = new AbortController();
  let underWay: Promise<void> | null = null;
  const begin = (): void => {
    underWay ??= round(stopping.signal)
      .then(() => {}, failed)
      .then(() => {
        underWay = null;
      });
  };
  const timer = setInterval(begin, everyMs);
  timer.unref();
  return {
    async stop() {
      clearInterval(timer);
      stopping.abort();
      await underWay;
    },
  };
}
