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
const MOST_ROWS = 20_000_000;
const FIRST_ROWS = 4096;
/** Beyond this many, values are kept to seven digits: a ten-thousandth of a degree is beyond any thermometer. */
const MOST_ROWS_IN_FULL = 4_000_000;

/** An empty store. Memory grows with what is pushed: 16 bytes a row, 12 in very long files. */
export function rowStore(): RowStore {
  let count = 0;
  let capacity = FIRST_ROWS;
  const stampBuffer = growing(8);
  let stamps = new Float64Array(stampBuffer);
  let valueBuffer = growing(8);
  let values: Float64Array | Float32Array = new Float64Array(valueBuffer);
  // Lines mostly follow one another, so only the places where they do not are kept.
  const jumpRows: number[] = [];
  const jumpLines: number[] = [];
  let expectedLine = -1;

  function growing(bytes: number): ArrayBuffer {
    return new ArrayBuffer(FIRST_ROWS * bytes, { maxByteLength: MOST_ROWS * bytes });
  }
  function grow(): void {
    if (count === MOST_ROWS_IN_FULL) {
      const narrow = growing(4);
      narrow.resize(capacity * 4);
      const kept = new Float32Array(narrow);
      kept.set(values.subarray(0, count));
      [valueBuffer, values] = [narrow, kept];
    }
    capacity = Math.min(
      MOST_ROWS,
      count < MOST_ROWS_IN_FULL ? Math.min(2 * capacity, MOST_ROWS_IN_FULL) : capacity + 1_000_000,
    );
    stampBuffer.resize(capacity * 8);
    valueBuffer.resize(capacity * values.BYTES_PER_ELEMENT);
  }
  return {
    get count() {
      return count;
    },
    push(stamp, value, line) {
      if (count === capacity) grow();
      stamps[count] = stamp;
      values[count] = value;
      if (line !== expectedLine) {
        jumpRows.push(count);
        jumpLines.push(line);
      }
      expectedLine = line + 1;
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
      if (firstLine !== expectedLine) {
        jumpRows.push(count);
        jumpLines.push(firstLine);
      }
      expectedLine = firstLine + rows;
      count += rows;
    },
    pop() {
      count--;
      expectedLine = -1;
    },
    close() {
      // One after the other, and each buffer given back at once: very long files must not lie in memory twice.
      stamps = stamps.slice(0, count);
      stampBuffer.resize(0);
      values = values.slice(0, count);
      valueBuffer.resize(0);
    },
    stamps: () => stamps,
    values: () => values,
    lineOf(row) {
      let [low, high] = [0, jumpRows.length - 1];
      while (low < high) {
        const middle = (low + high + 1) >> 1;
        if (jumpRows[middle]! <= row) low = middle;
        else high = middle - 1;
      }
      return jumpLines[low]! + row - jumpRows[low]!;
    },
  };
}
