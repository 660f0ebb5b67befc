/** Lifetime of a probe's result [ms]: anybody may call `/readyz`, and a probe waits for the disk. */
const PROBE_EVERY_MS = 2_000;

/** Tells whether a write would succeed, with few real probes of the database. */
export interface DatabaseProbe {
  (): Promise<void>;
  /** Reports the result of a real write; one that contradicts the last probe makes the next one real. */
  wrote(isGood: boolean): void;
}

interface Outcome {
  readonly outcome: Promise<void>;
  /** Undefined: not known yet. */
  isGood?: boolean;
}

/** @param write Throws as a real write would. */
export function throttledProbe(write: () => Promise<void>): DatabaseProbe {
  let last: Outcome | undefined;
  const probe = (): Promise<void> => {
    if (last) return last.outcome;
    const current: Outcome = { outcome: write() };
    const ended = (isGood: boolean): void => {
      current.isGood = isGood;
      setTimeout(() => {
        if (last === current) last = undefined;
      }, PROBE_EVERY_MS).unref();
    };
    current.outcome.then(
      () => ended(true),
      () => ended(false),
    );
    last = current;
    return current.outcome;
  };
  return Object.assign(probe, {
    wrote(isGood: boolean) {
      if (last?.isGood !== isGood) last = undefined;
    },
  });
}
