const SLICE = 100_000;

/** Rows in time order, each instant once. */
export interface Ordered {
  readonly count: number;
  /** The row, in file order, that each reading came from; null where the file was in order and nothing was left out. */
  readonly rowOf: Uint32Array | null;
  readonly repeated: number;
  /** Instants that came with different values: their mean stands. */
  readonly conflictsMs: number[];
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
  if (isRising(atMs, count)) return { count, rowOf: null, repeated: 0, conflictsMs: [] };
  let order = yield* orderOf(atMs, count);
  if (order) {
    const [times, kept] = [atMs.slice(0, count), values.slice(0, count)];
    for (let i = 0; i < order.length; i++) {
      atMs[i] = times[order[i]!]!;
      values[i] = kept[order[i]!]!;
      if (i % SLICE === 0) yield;
    }
  }
  const ordered = order ? order.length : count;
  let [out, repeated] = [0, 0];
  const conflictsMs: number[] = [];
  for (let i = 0; i < ordered; ) {
    const at = atMs[i]!;
    const from = i;
    let sum = 0;
    let differ = false;
    for (; i < ordered && atMs[i] === at; i++) {
      sum += values[i]!;
      differ ||= values[i] !== values[from];
    }
    if (i - from > 1) {
      repeated += i - from - 1;
      if (differ) conflictsMs.push(at);
      order ??= Uint32Array.from({ length: count }, (_, row) => row);
    }
    atMs[out] = at;
    values[out] = differ ? sum / (i - from) : values[from]!;
    if (order) order[out] = order[from]!;
    out++;
    if (out % SLICE === 0) yield;
  }
  return { count: out, rowOf: order ? order.subarray(0, out) : null, repeated, conflictsMs };
}

function isRising(atMs: Float64Array, count: number): boolean {
  if (count > 0 && Number.isNaN(atMs[0]!)) return false;
  for (let i = 1; i < count; i++) if (!(atMs[i]! > atMs[i - 1]!)) return false;
  return true;
}

/** The rows in rising time, those without an instant left out; null where they are so already. */
function* orderOf(atMs: Float64Array, count: number): Generator<void, Uint32Array | null> {
  let inOrder = true;
  for (let i = 0; i < count && inOrder; i++) inOrder = i === 0 ? !Number.isNaN(atMs[0]) : atMs[i]! >= atMs[i - 1]!;
  if (inOrder) return null;
  yield;
  let falls = 0;
  for (let i = 1; i < count; i++) if (atMs[i]! < atMs[i - 1]!) falls++;
  const isNewestFirst = falls > 0.5 * count;
  let order = new Uint32Array(count);
  let length = 0;
  for (let k = 0; k < count; k++) {
    const row = isNewestFirst ? count - 1 - k : k;
    if (!Number.isNaN(atMs[row])) order[length++] = row;
  }
  order = order.subarray(0, length);
  yield;
  let ends: number[] = [];
  for (let i = 1; i <= length; i++) if (i === length || atMs[order[i]!]! < atMs[order[i - 1]!]!) ends.push(i);
  let spare = new Uint32Array(ends.length > 1 ? length : 0);
  while (ends.length > 1) {
    const merged: number[] = [];
    let start = 0;
    for (let run = 0; run < ends.length; run += 2) {
      const middle = ends[run]!;
      const end = ends[run + 1] ?? middle;
      let [left, right] = [start, middle];
      for (let out = start; out < end; out++) {
        const takeLeft = left < middle && (right >= end || atMs[order[left]!]! <= atMs[order[right]!]!);
        spare[out] = takeLeft ? order[left++]! : order[right++]!;
        if (out % SLICE === 0) yield;
      }
      merged.push(end);
      start = end;
    }
    [order, spare] = [spare, order];
    ends = merged;
  }
  return order;
}
