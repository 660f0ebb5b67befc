/** Runs work when its owner's turn comes. */
export type OwnerQueue = <T>(owner: string, work: () => Promise<T>) => Promise<T>;

/**
 * A queue in which owners take turns, so that one owner's long queue never holds up another's single task. The tasks of
 * one owner start in order of arrival.
 *
 * @param total    Tasks running at once.
 * @param perOwner Tasks of one owner running at once.
 */
export function ownerQueue(total: number, perOwner: number): OwnerQueue {
  // The owner next in turn comes first.
  const waiting = new Map<string, (() => void)[]>();
  const running = new Map<string, number>();
  let busy = 0;

  const startNext = (): void => {
    if (busy >= total) return;
    for (const [owner, queue] of waiting) {
      const active = running.get(owner) ?? 0;
      if (active >= perOwner) continue;
      const start = queue.shift()!;
      waiting.delete(owner);
      if (queue.length > 0) waiting.set(owner, queue);
      running.set(owner, active + 1);
      busy++;
      start();
      return;
    }
  };
  const end = (owner: string): void => {
    const active = running.get(owner)! - 1;
    if (active === 0) running.delete(owner);
    else running.set(owner, active);
    busy--;
    startNext();
  };

  return async (owner, work) => {
    await new Promise<void>((start) => {
      const queue = waiting.get(owner);
      if (queue) queue.push(start);
      else waiting.set(owner, [start]);
      startNext();
    });
    try {
      return await work();
    } finally {
      end(owner);
    }
  };
}
