/** Tells whether more than one caller has asked lately. */
export interface TwoCallers {
  asked(caller: string, atMs: number): void;
  areAbout(atMs: number): boolean;
}

/** @param forMs How long a caller is about after a question [ms]. */
export function twoCallers(forMs: number): TwoCallers {
  let latest: string | null = null;
  let latestMs = Number.NEGATIVE_INFINITY;
  /** When one other than the latest asked last. */
  let otherMs = Number.NEGATIVE_INFINITY;
  return {
    asked(caller, atMs) {
      if (caller !== latest) otherMs = latestMs;
      latest = caller;
      latestMs = atMs;
    },
    areAbout: (atMs) => atMs - otherMs < forMs && atMs - latestMs < forMs,
  };
}
