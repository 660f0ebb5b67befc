/** Tells whether at least two callers were active lately. */
export interface TwoCallers {
  sawQuestion(caller: string, atMs: number): void;
  areActive(atMs: number): boolean;
}

/** @param forMs Time after a question during which its caller counts as active [ms]. */
export function twoCallers(forMs: number): TwoCallers {
  let latest: string | null = null;
  let latestMs = Number.NEGATIVE_INFINITY;
  /** Time of the latest question from another caller than the latest. */
  let otherMs = Number.NEGATIVE_INFINITY;
  return {
    sawQuestion(caller, atMs) {
      if (caller !== latest) otherMs = latestMs;
      latest = caller;
      latestMs = atMs;
    },
    areActive: (atMs) => atMs - otherMs < forMs && atMs - latestMs < forMs,
  };
}
