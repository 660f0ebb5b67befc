/** An item in the queue. */
export interface Waiting<T> {
  readonly item: T;
  /** The owner whose turn it uses. */
  readonly owner: string;
  /** Amount of work, in any unit, > 0. */
  readonly cost: number;
  /** Memory that it holds while it waits. */
  readonly bytes: number;
  /** True for work that nobody waits for; it runs only when no other work waits. */
  readonly isBackground: boolean;
}

export interface FairQueue<T> {
  add(waiting: Waiting<T>): void;
  /** Removes and returns the next item among the owners that may be served now. */
  next(mayServe?: (owner: string, isBackground: boolean) => boolean): Waiting<T> | undefined;
  /** Removes an item; false when it is not in the queue. */
  remove(item: T): boolean;
  size(isBackground: boolean): number;
  bytes(): number;
  cost(): number;
  /** Number of owners in memory. */
  owners(): number;
}

/** An owner's items in order of arrival. */
interface Line<T> {
  readonly waiting: Waiting<T>[];
  /** Virtual start time of the first of them. */
  start: number;
}

/**
 * A queue in which owners take turns: the owner with less work done comes first, and nobody waits for all of
 * another's items. People come before background work.
 *
 * Start-time fair queueing: an owner's first item has a start tag, the later one of the virtual time and the end of the
 * owner's previous item. The lowest tag is served and becomes the virtual time. Among equal tags the owner with fewer
 * waiting items is served.
 *
 * Two owners that both have items waiting all the time get the same work done, to within the cost of one item of
 * each. An owner new to the queue waits for at most one item of each other owner.
 *
 * Source: Goyal, Vin, Cheng (1996), Start-time fair queueing, SIGCOMM '96: 157-168.
 */
export function fairQueue<T>(): FairQueue<T> {
  const people = turns<T>();
  const background = turns<T>();
  const of = (isBackground: boolean) => (isBackground ? background : people);
  let bytes = 0;
  let cost = 0;
  const removed = (waiting: Waiting<T> | undefined): Waiting<T> | undefined => {
    bytes -= waiting?.bytes ?? 0;
    cost -= waiting?.cost ?? 0;
    return waiting;
  };
  return {
    add(waiting) {
      bytes += waiting.bytes;
      cost += waiting.cost;
      of(waiting.isBackground).add(waiting);
    },
    next: (mayServe = () => true) =>
      removed(people.next((owner) => mayServe(owner, false)) ?? background.next((owner) => mayServe(owner, true))),
    remove: (item) => removed(people.remove(item) ?? background.remove(item)) !== undefined,
    size: (isBackground) => of(isBackground).size(),
    bytes: () => bytes,
    cost: () => cost,
    owners: () => people.owners() + background.owners(),
  };
}

/** The queue of one priority. */
function turns<T>() {
  const lines = new Map<string, Line<T>>();
  let virtual = 0;
  let size = 0;

  /** Drops owners without waiting items whose last item ends no later than a new one would start. */
  const forget = (): void => {
    if (size === 0) {
      lines.clear();
      virtual = 0;
      return;
    }
    for (const [owner, { waiting, start }] of lines) if (waiting.length === 0 && start <= virtual) lines.delete(owner);
  };

  return {
    size: () => size,
    owners: () => lines.size,
    add(one: Waiting<T>) {
      const line = lines.get(one.owner) ?? { waiting: [], start: virtual };
      if (line.waiting.length === 0) line.start = Math.max(virtual, line.start);
      line.waiting.push(one);
      lines.set(one.owner, line);
      size++;
    },
    next(mayServe: (owner: string) => boolean): Waiting<T> | undefined {
      let first: Line<T> | undefined;
      for (const [owner, line] of lines) {
        if (line.waiting.length === 0 || !mayServe(owner)) continue;
        const isSooner =
          !first ||
          line.start < first.start ||
          (line.start === first.start && line.waiting.length < first.waiting.length);
        if (isSooner) first = line;
      }
      const one = first?.waiting.shift();
      if (!first || !one) return undefined;
      size--;
      virtual = Math.max(virtual, first.start);
      first.start += one.cost;
      forget();
      return one;
    },
    remove(item: T): Waiting<T> | undefined {
      for (const { waiting } of lines.values()) {
        const at = waiting.findIndex((one) => one.item === item);
        if (at < 0) continue;
        const [one] = waiting.splice(at, 1);
        size--;
        forget();
        return one;
      }
      return undefined;
    },
  };
}
