import { numberInBytes } from './number-in-bytes.js';
import type { StampPattern } from './read-stamp.js';
import type { RowStore } from './row-store.js';
import { stampsInBytes } from './stamp-in-bytes.js';

/** Where the cells stand that are wanted of a row. */
export interface PlainLayout {
  readonly delimiter: string;
  readonly stampColumn: number;
  /** Columns of values, one for each store. */
  readonly valueColumns: readonly number[];
  /** How many cells a row must have; null: any number that reaches the last wanted one. */
  readonly width: number | null;
}

/**
 * Reads rows straight from bytes, without making text of them, as long as they are plain: ASCII, no quotation mark, a
 * stamp that differs from one read before in the digits of its time alone, and values of digits with one mark. It takes
 * only rows that are read the same from text, and leaves all others, and every doubt, to those who read text.
 */
export interface PlainRows {
  /** Rows are plain from now on whose stamps are like this one. */
  learn(stamp: string, packed: number, pattern: StampPattern | null): void;
  /**
   * Reads rows into the stores until one is not plain, and returns where that one begins.
   *
   * @param from Where a line begins.
   * @param end  Right behind a line feed.
   * @param line The number of the line at `from`.
   */
  read(bytes: Uint8Array, from: number, end: number, line: number): number;
  /** How many rows the last `read` took. */
  rows(): number;
  /** The cell of the value that was read last. */
  lastCell(): string;
}

const LF = 10;
const CR = 13;
const QUOTE = 34;
const FIRST_BEYOND_ASCII = 0x80;
/** What a column holds: the value for the store of this number, the stamp, or nothing that is wanted. */
const STAMP = -1;
const PASSED_OVER = -2;
/** So many rows go into the stores at once. */
const BATCH = 1024;

/** A reader of plain rows that has learnt no stamp yet, and so takes none. */
export function plainRows(
  { delimiter, stampColumn, valueColumns, width }: PlainLayout,
  stores: readonly RowStore[],
): PlainRows {
  const mark = delimiter.charCodeAt(0);
  const lastStore = stores.length - 1;
  const leastCells = 1 + Math.max(stampColumn, ...valueColumns);
  const kinds = new Int8Array(leastCells).fill(PASSED_OVER);
  kinds[stampColumn] = STAMP;
  for (let i = 0; i < valueColumns.length; i++) kinds[valueColumns[i]!] = i;
  const stamps = stampsInBytes();
  const stampsRead = new Float64Array(BATCH);
  const valuesRead = valueColumns.map(() => new Float64Array(BATCH));
  let rows = 0;
  let lastCell = '';
  let [cellFrom, cellTo] = [0, 0];

  /** Reads the row that begins here into a slot of the batch. Returns where the next begins; -1: it is not plain. */
  function readRow(bytes: Uint8Array, from: number, slot: number): number {
    let i = from;
    for (let cells = 1; ; cells++) {
      const kind = cells <= leastCells ? kinds[cells - 1]! : PASSED_OVER;
      if (kind === STAMP) i = stamps.read(bytes, i, stampsRead, slot);
      else if (kind === PASSED_OVER) while (isInCell(bytes[i]!, mark)) i++;
      else {
        if (kind === lastStore) cellFrom = i;
        i = numberInBytes(bytes, i, mark, valuesRead[kind]!, slot);
        if (kind === lastStore) cellTo = i;
      }
      if (i < 0) return -1;
      const code = bytes[i++];
      if (code === mark) continue;
      const isEnd = code === LF || (code === CR && bytes[i++] === LF);
      return isEnd && cells >= leastCells && (width === null || cells === width) ? i : -1;
    }
  }

  return {
    learn: stamps.learn,
    rows: () => rows,
    lastCell: () => lastCell,
    read(bytes, from, end, line) {
      let at = from;
      rows = 0;
      for (let isPlain = true; isPlain && at < end; ) {
        let count = 0;
        let [lastFrom, lastTo] = [0, 0];
        while (count < BATCH && at < end) {
          const next = readRow(bytes, at, count);
          isPlain = next >= 0;
          if (!isPlain) break;
          at = next;
          lastFrom = cellFrom;
          lastTo = cellTo;
          count++;
        }
        if (count === 0) break;
        for (let i = 0; i < stores.length; i++) stores[i]!.pushRows(stampsRead, valuesRead[i]!, count, line + rows);
        lastCell = String.fromCharCode(...bytes.subarray(lastFrom, lastTo));
        rows += count;
      }
      return at;
    },
  };
}

const isInCell = (code: number, mark: number): boolean =>
  code !== mark && code !== LF && code !== CR && code !== QUOTE && code < FIRST_BEYOND_ASCII;
