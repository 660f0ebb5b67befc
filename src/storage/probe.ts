/** How long the outcome of a probe stands [ms]: `/readyz` may be asked by anybody, and a probe waits for the disk. */
const PROBE_EVERY_MS = 2_000;

/** Whether a write would succeed, asked seldom of the database itself. */
export interface DatabaseProbe {
  (): Promise<void>;
  /** Reports how a real write ended, so that the next probe asks again where this disagrees with the last outcome. */
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
    const asked: Outcome = { outcome: write() };
    const ended = (isGood: boolean): void => {
      asked.isGood = isGood;
      setTimeout(() => {
        if (last === asked) last = undefined;
      }, PROBE_EVERY_MS).unref();
    };
    asked.outcome.then(
      () => ended(true),
      () => ended(false),
    );
    last = asked;
    return asked.outcome;
  };
  return Object.assign(probe, {
    wrote(isGood: boolean) {
      if (last?.isGood !== isGood) last = undefined;
    },
  });
}
