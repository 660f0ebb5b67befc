/** Work that is begun again and again. */
export interface Scheduler {
  /** Begins no more, gives up what was begun, and resolves when it has ended. */
  stop(): Promise<void>;
}

/**
 * Begins a round of work every so often, one after the other: while one is under way no other is begun.
 *
 * @param everyMs How often [ms].
 * @param round   The work; its signal is aborted when the rounds are stopped.
 * @param failed  Told of a round that failed; the next one comes all the same.
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
