/** Something that waits for its turn. */
export interface Waiting<T> {
  readonly item: T;
  /** Whose turn it takes. */
  readonly owner: string;
  /** How much work it is, in any unit, > 0. */
  readonly cost: number;
  /** Memory that it holds while it waits. */
  readonly bytes: number;
  /** Waits until nobody else does. */
  readonly isBackground: boolean;
}

export interface FairQueue<T> {
  add(waiting: Waiting<T>): void;
  /** Takes out what comes next among the owners that may be served now. */
  next(mayServe?: (owner: string, isBackground: boolean) => boolean): Waiting<T> | undefined;
  /** Takes one out that no longer waits; false: it is not here. */
  remove(item: T): boolean;
  size(isBackground: boolean): number;
  bytes(): number;
  cost(): number;
  /** How many owners are remembered. */
  owners(): number;
}

/** An owner's questions in the order in which they came. */
interface Line<T> {
  readonly waiting: Waiting<T>[];
  /** Virtual time at which the first of them starts. */
  start: number;
}

/**
 * A queue in which owners take turns: whoever has had less work done comes first, and nobody waits for the whole of
 * another's questions. People come before background work.
 *
 * Start-time fair queueing: each owner's first question has a start tag, the later one of the virtual time and the end of
 * the owner's question before; the lowest tag is served, and becomes the virtual time. Of equal tags that of the
 * owner with fewer questions waiting is served.
 *
 * Two owners that both have questions waiting all the time get the same work done, to within the cost of one question of
 * each. An owner without any finds at most one question of each other owner before its own.
 *
 * Source: Goyal, Vin, Cheng (1996), Start-time fair queueing, SIGCOMM '96: 157-168.
 */
export function fairQueue<T>(): FairQueue<T> {
  const people = turns<T>();
  const background = turns<T>();
  const of = (isBackground: boolean) => (isBackground ? background : people);
  let bytes = 0;
  let cost = 0;
  const taken = (waiting: Waiting<T> | undefined): Waiting<T> | undefined => {
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
      taken(people.next((owner) => mayServe(owner, false)) ?? background.next((owner) => mayServe(owner, true))),
    remove: (item) => taken(people.remove(item) ?? background.remove(item)) !== undefined,
    size: (isBackground) => of(isBackground).size(),
    bytes: () => bytes,
    cost: () => cost,
    owners: () => people.owners() + background.owners(),
  };
}

/** The owners of one priority, taking turns. */
function turns<T>() {
  const lines = new Map<string, Line<T>>();
  let virtual = 0;
  let size = 0;

  /** Forgets owners who wait for nothing, and whose last question ends no later than a new one would start. */
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
