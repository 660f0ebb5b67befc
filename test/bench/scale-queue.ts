/** A look that has to be worked out. */
export interface Job {
  readonly atS: number;
  readonly tookS: number;
  readonly isPerson: boolean;
}

export interface Waited {
  readonly waitS: number;
  readonly isPerson: boolean;
  readonly isRefused: boolean;
}

/** Nobody waits longer for a worker; who would is refused [s]. */
const DEADLINE_S = 10;

/**
 * The queue of a worker pool: people first, in their order; looks for webhooks behind them, one at a time. Jobs are added
 * in the order of time.
 */
export function lookQueue(workers: number) {
  const freeAtS = new Float64Array(workers);
  const background: Job[] = [];
  const ended: Waited[] = [];
  let nextBackground = 0;
  let backgroundFreeAtS = 0;

  const earliest = (): number => {
    let worker = 0;
    for (let i = 1; i < workers; i++) if (freeAtS[i]! < freeAtS[worker]!) worker = i;
    return worker;
  };

  /** Looks for webhooks that begin before a time, while a worker is free for them. */
  function runBackground(untilS: number): void {
    while (nextBackground < background.length) {
      const job = background[nextBackground]!;
      const worker = earliest();
      const startS = Math.max(job.atS, freeAtS[worker]!, backgroundFreeAtS);
      if (startS >= untilS) return;
      nextBackground++;
      freeAtS[worker] = backgroundFreeAtS = startS + job.tookS;
      ended.push({ waitS: startS - job.atS, isPerson: false, isRefused: false });
    }
  }

  return {
    add(job: Job): void {
      runBackground(job.atS);
      if (!job.isPerson) {
        background.push(job);
        return;
      }
      const worker = earliest();
      const startS = Math.max(job.atS, freeAtS[worker]!);
      const waitS = startS - job.atS;
      const isRefused = waitS > DEADLINE_S;
      if (!isRefused) freeAtS[worker] = startS + job.tookS;
      ended.push({ waitS, isPerson: true, isRefused });
    },
    /** What all have waited; those still in the queue are worked out after the day. */
    end(): Waited[] {
      runBackground(Number.POSITIVE_INFINITY);
      return ended;
    },
  };
}
