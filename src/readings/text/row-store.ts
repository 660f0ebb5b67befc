import { lineRuns } from './line-runs.js';

/** Rows as they are read: a stamp and a value each, in file order, in arrays that grow in place. */
export interface RowStore {
  readonly count: number;
  push(stamp: number, value: number, line: number): void;
  /** The first `rows` of these arrays, from lines that follow one another. */
  pushRows(stamps: Float64Array, values: Float64Array, rows: number, firstLine: number): void;
  stamps(): Float64Array;
  values(): Float64Array | Float32Array;
  /** Takes the last row back. */
  pop(): void;
  /** No row comes any more: the arrays become as long as there are rows, and of a kind that is quicker to loop over. */
  close(): void;
  /** The line of the file that a row came from. */
  lineOf(row: number): number;
}

/** A file of 256 MB has at most so many rows of 14 bytes or more. */
const MAX_ROWS = 20_000_000;
/** Beyond this many, values are kept to seven digits: a ten-thousandth of a degree is beyond any thermometer. */
const MAX_ROWS_IN_FULL = 4_000_000;
/** Room is made for so many rows at a time. The system gives memory only for what is written. */
const ROOMS = [4096, 65_536, 1_048_576, MAX_ROWS_IN_FULL];
/** Beyond all these, memory grows in place, so that very long files do not lie in it twice. */
const MORE_ROWS = 1_000_000;

/** Room is made at once for up to so many rows that are only expected. */
const MAX_EXPECTED_ROWS = 1_048_576;

/**
 * An empty store. Memory grows with what is pushed: 16 bytes a row, 12 in very long files.
 *
 * @param expectedRows More and fewer may come.
 */
export function rowStore(expectedRows = 0): RowStore {
  let count = 0;
  let capacity = Math.max(ROOMS[0]!, Math.min(MAX_EXPECTED_ROWS, Math.ceil(expectedRows)));
  let stamps = new Float64Array(capacity);
  let values: Float64Array | Float32Array = new Float64Array(capacity);
  const lines = lineRuns();

  /** Makes room for more rows; a new array has none of the rows yet. */
  function grow(): void {
    const room = ROOMS.find((rows) => rows > capacity);
    capacity = room ?? Math.min(MAX_ROWS, capacity + MORE_ROWS);
    if (room) {
      stamps = moved(stamps, count, new Float64Array(capacity));
      values = moved(values, count, new Float64Array(capacity));
    } else if (count === MAX_ROWS_IN_FULL) {
      stamps = moved(stamps, count, new Float64Array(growing(capacity, 8)));
      values = moved(values, count, new Float32Array(growing(capacity, 4)));
    } else {
      (stamps.buffer as ArrayBuffer).resize(capacity * 8);
      (values.buffer as ArrayBuffer).resize(capacity * 4);
    }
  }

  return {
    get count() {
      return count;
    },
    push(stamp, value, line) {
      if (count === capacity) grow();
      stamps[count] = stamp;
      values[count] = value;
      lines.add(count, line, 1);
      count++;
    },
    pushRows(newStamps, newValues, rows, firstLine) {
      if (count + rows > capacity) {
        // One by one, as the store may change its kind in between.
        for (let i = 0; i < rows; i++) this.push(newStamps[i]!, newValues[i]!, firstLine + i);
        return;
      }
      stamps.set(newStamps.subarray(0, rows), count);
      values.set(newValues.subarray(0, rows), count);
      lines.add(count, firstLine, rows);
      count += rows;
    },
    pop() {
      count--;
      lines.end();
    },
    close() {
      stamps = closed(stamps, count);
      values = closed(values, count);
    },
    stamps: () => stamps,
    values: () => values,
    lineOf: lines.lineOf,
  };
}

/** Memory that can grow in place up to the most rows. */
const growing = (rows: number, bytes: number): ArrayBuffer =>
  new ArrayBuffer(rows * bytes, { maxByteLength: MAX_ROWS * bytes });

function moved<Rows extends Float64Array | Float32Array>(
  from: Float64Array | Float32Array,
  count: number,
  to: Rows,
): Rows {
  to.set(from.subarray(0, count));
  return to;
}

/** An array that has grown in place is slow to loop over: its rows are copied, and its memory given back at once. */
function closed<Rows extends Float64Array | Float32Array>(rows: Rows, count: number): Rows {
  const { buffer } = rows as { buffer: ArrayBuffer };
  if (!buffer.resizable) return rows.subarray(0, count) as Rows;
  const kept = rows.slice(0, count) as Rows;
  buffer.resize(0);
  return kept;
}
