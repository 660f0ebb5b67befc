const SLICE = 100_000;
/** Maximum rows used at one instant: with more the clock stood still. */
const MAX_ALIKE = 1000;

/** Rows in time order, each instant once. */
export interface Ordered {
  readonly count: number;
  /** The row, in file order, that a reading came from. */
  readonly rowOf: (reading: number) => number;
  readonly repeated: number;
  /** Number of instants with different values; their mean is used, however often each came. */
  readonly conflicts: number;
}

/**
 * Puts rows into time order in place, drops those without an instant (NaN), and merges those of one instant.
 *
 * @param atMs   Instants [ms]; NaN where a row has none. Shape (n or more).
 * @param values Any unit. Shape (n or more).
 * @param count  n, the rows.
 *
 * Yields now and then, so that a server can answer others. Cost: O(n log r), r being the stretches already in order.
 */
export function* inTimeOrder(
  atMs: Float64Array,
  values: Float64Array | Float32Array,
  count: number,
): Generator<void, Ordered> {
  const inOrder = { count, repeated: 0, conflicts: 0 };
  if (isRising(atMs, count)) return { ...inOrder, rowOf: (i) => i };
  if (isFalling(atMs, count)) {
    // The newest first, as many programs write: nothing more is needed, and no memory.
    atMs.subarray(0, count).reverse();
    values.subarray(0, count).reverse();
    return { ...inOrder, rowOf: (i) => count - 1 - i };
  }
  const sorted = yield* orderOf(atMs, count);
  if (sorted) yield* rearrange(atMs, values, sorted.order);
  let order = sorted?.order;
  const ordered = sorted ? sorted.length : count;
  let [out, repeated] = [0, 0];
  let conflicts = 0;
  for (let i = 0; i < ordered; ) {
    const at = atMs[i]!;
    const from = i;
    for (i++; i < ordered && atMs[i] === at; ) i++;
    const alike = i - from === 1 ? null : new Set(values.subarray(from, Math.min(i, from + MAX_ALIKE)));
    if (alike) {
      repeated += i - from - 1;
      if (alike.size > 1) conflicts++;
      order ??= Uint32Array.from({ length: count }, (_, row) => row);
    }
    atMs[out] = at;
    values[out] = alike && alike.size > 1 ? meanOf(alike) : values[from]!;
    if (order) order[out] = order[from]!;
    out++;
    if (out % SLICE === 0) yield;
  }
  return { count: out, rowOf: order ? (i) => order[i]! : (i) => i, repeated, conflicts };
}

const meanOf = (values: ReadonlySet<number>): number => [...values].reduce((sum, one) => sum + one, 0) / values.size;

function isRising(atMs: Float64Array, count: number): boolean {
  if (count > 0 && Number.isNaN(atMs[0]!)) return false;
  for (let i = 1; i < count; i++) if (!(atMs[i]! > atMs[i - 1]!)) return false;
  return true;
}

function isFalling(atMs: Float64Array, count: number): boolean {
  for (let i = 1; i < count; i++) if (!(atMs[i]! < atMs[i - 1]!)) return false;
  return count > 1;
}

/** The rows in rising time, and how many have an instant: those without one stand behind. null: they are in order. */
function* orderOf(atMs: Float64Array, count: number): Generator<void, { order: Uint32Array; length: number } | null> {
  let inOrder = true;
  for (let i = 0; i < count && inOrder; i++) inOrder = i === 0 ? !Number.isNaN(atMs[0]) : atMs[i]! >= atMs[i - 1]!;
  if (inOrder) return null;
  yield;
  let falls = 0;
  for (let i = 1; i < count; i++) if (atMs[i]! < atMs[i - 1]!) falls++;
  const isNewestFirst = falls > 0.5 * count;
  let order = new Uint32Array(count);
  let [length, behind] = [0, count];
  for (let k = 0; k < count; k++) {
    const row = isNewestFirst ? count - 1 - k : k;
    if (Number.isNaN(atMs[row])) order[--behind] = row;
    else order[length++] = row;
  }
  yield;
  // Stretches that are in order already are merged two by two; each is kept by its end.
  let ends = new Uint32Array(length);
  let runs = 0;
  for (let i = 1; i <= length; i++) if (i === length || atMs[order[i]!]! < atMs[order[i - 1]!]!) ends[runs++] = i;
  ends = ends.slice(0, runs);
  let spare = runs > 1 ? order.slice() : order;
  while (runs > 1) {
    let [start, merged] = [0, 0];
    for (let run = 0; run < runs; run += 2) {
      const middle = ends[run]!;
      const end = run + 1 < runs ? ends[run + 1]! : middle;
      let [left, right] = [start, middle];
      for (let out = start; out < end; out++) {
        const takeLeft = left < middle && (right >= end || atMs[order[left]!]! <= atMs[order[right]!]!);
        spare[out] = takeLeft ? order[left++]! : order[right++]!;
        if (out % SLICE === 0) yield;
      }
      ends[merged++] = end;
      start = end;
    }
    [order, spare] = [spare, order];
    runs = merged;
  }
  return { order, length };
}

/** Moves order[i] to i in place, following each cycle of moves once. */
function* rearrange(atMs: Float64Array, values: Float64Array | Float32Array, order: Uint32Array): Generator<void> {
  const done = new Uint8Array(order.length);
  for (let start = 0; start < order.length; start++) {
    if (start % SLICE === 0) yield;
    if (done[start] === 1) continue;
    const [startMs, startValue] = [atMs[start]!, values[start]!];
    let to = start;
    for (let from = order[to]!; from !== start; from = order[to]!) {
      atMs[to] = atMs[from]!;
      values[to] = values[from]!;
      done[to] = 1;
      to = from;
    }
    atMs[to] = startMs;
    values[to] = startValue;
    done[to] = 1;
  }
}
