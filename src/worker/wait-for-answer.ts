import { StoppedError } from '../basics/errors.js';
import type { PoolEntry, Waiter } from './pool-entry.js';

interface WaitRules {
  /** Aborted once the caller has gone. */
  readonly signal: AbortSignal | undefined;
  readonly deadlineMs: number;
  /** Time after the deadline for which late work runs on [ms]. */
  readonly graceMs: number;
  /** The error for a late waiter. */
  late(): Error;
  /** Removes a waiter from the entry. */
  leave(entry: PoolEntry, waiter: Waiter): void;
}

/** Waits for an entry's answer, until its deadline or until the caller has gone. */
export const waitForAnswer = (
  entry: PoolEntry,
  { signal, deadlineMs, graceMs, late, leave }: WaitRules,
): Promise<unknown> =>
  new Promise((resolve, reject) => {
    const stopWaiting = (): void => {
      clearTimeout(timer);
      signal?.removeEventListener('abort', onGone);
    };
    const waiter: Waiter = {
      resolve: (answer) => {
        stopWaiting();
        resolve(answer);
      },
      reject: (error) => {
        stopWaiting();
        reject(error);
      },
    };
    const onGone = (): void => {
      waiter.reject(new StoppedError());
      leave(entry, waiter);
    };
    const onLate = (): void => {
      waiter.reject(late());
      // Work that has begun goes on: a repeated question then finds it done, and a slow machine makes headway.
      if (entry.state === 'working') setTimeout(() => leave(entry, waiter), graceMs).unref();
      else leave(entry, waiter);
    };
    const timer = setTimeout(onLate, deadlineMs);
    signal?.addEventListener('abort', onGone, { once: true });
    entry.waiters.add(waiter);
  });
