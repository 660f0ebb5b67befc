/** An item of work that belongs to an owner. */
interface Owned {
  readonly owner: string;
}

/**
 * Runs work on each item, a few at a time and fewer for each owner, so that nobody waits for all of another's.
 *
 * @param due      Items in the order in which they should start, as far as owners allow.
 * @param atOnce   Items at a time, >= 1.
 * @param perOwner Items of one owner at a time, >= 1.
 * @param work     Rejects only for a bug of ours, which ends the rest.
 */
export async function byOwner<One extends Owned>(
  due: readonly One[],
  { atOnce, perOwner }: { readonly atOnce: number; readonly perOwner: number },
  work: (one: One) => Promise<void>,
): Promise<void> {
  const waiting = [...due];
  const underWay = new Map<string, number>();
  const wakers: (() => void)[] = [];
  const next = async (): Promise<void> => {
    while (waiting.length > 0) {
      const at = waiting.findIndex(({ owner }) => (underWay.get(owner) ?? 0) < perOwner);
      if (at < 0) {
        await new Promise<void>((wake) => wakers.push(wake));
        continue;
      }
      const [one] = waiting.splice(at, 1);
      const { owner } = one!;
      underWay.set(owner, (underWay.get(owner) ?? 0) + 1);
      try {
        await work(one!);
      } finally {
        underWay.set(owner, underWay.get(owner)! - 1);
        for (const wake of wakers.splice(0)) wake();
      }
    }
  };
  await Promise.all(Array.from({ length: Math.min(atOnce, due.length) }, next));
}
