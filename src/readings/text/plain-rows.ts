import { type KnownStamp, timeInBytes, viewOf } from '../time/stamp-in-bytes.js';
import { numberInBytes } from './number-in-bytes.js';
import type { RowStore } from './row-store.js';

/** Places of the wanted cells of a row. */
export interface PlainLayout {
  readonly delimiter: string;
  readonly stampColumn: number;
  /** Columns of values, one for each store. */
  readonly valueColumns: readonly number[];
  /** Number of cells of a row; null: any number that reaches the last wanted one. */
  readonly width: number | null;
}

/**
 * Reads rows straight from bytes, without making text of them, as long as they are plain: ASCII, no quotation mark, a
 * stamp that differs from one read before in the digits of its time alone, and values of digits with one mark. It takes
 * only rows that are read the same from text, and leaves all others, and every doubt, to those who read text. A stamp
 * that begins another day is read from its text, and the rows behind it are like it.
 */
export interface PlainRows {
  /**
   * Reads rows into the stores until one is not plain, and returns where that one begins.
   *
   * @param from Where a line begins.
   * @param end  Right behind a line feed.
   * @param line The number of the line at `from`.
   */
  read(bytes: Uint8Array, from: number, end: number, line: number): number;
  /** Number of rows taken by the last `read`. */
  rows(): number;
  /** The cell of the value that was read last. */
  lastCell(): string;
}

const LF = 10;
const CR = 13;
const QUOTE = 34;
const FIRST_BEYOND_ASCII = 0x80;
/** Use of a column: the value for the store of this number, the stamp, or none. */
const STAMP = -1;
const PASSED_OVER = -2;
/** Number of rows put into the stores at once. */
const BATCH = 1024;
/** To read a stamp from its text costs as much as to read so many rows: it must be good for as many. */
const MIN_ROWS_ALIKE = 12;

/** Rows that have been read, and how their cells stand. */
interface Batch {
  /** The delimiter's code. */
  readonly mark: number;
  /** Uses of the columns, up to the last wanted one. */
  readonly kinds: Int8Array;
  /** Number of cells of a row; 0: any number. */
  readonly width: number;
  readonly stamps: Float64Array;
  /** Values of each store. */
  readonly values: readonly Float64Array[];
  count: number;
  /** Offset of the last row. */
  lastRowAt: number;
}

/**
 * A reader of plain rows.
 *
 * @param readStamp Reads a stamp from its text; null where others cannot be read by it.
 */
export function plainRows(
  { delimiter, stampColumn, valueColumns, width }: PlainLayout,
  stores: readonly RowStore[],
  readStamp: (stamp: string) => KnownStamp | null,
): PlainRows {
  const mark = delimiter.charCodeAt(0);
  const kinds = new Int8Array(1 + Math.max(stampColumn, ...valueColumns)).fill(PASSED_OVER);
  kinds[stampColumn] = STAMP;
  for (let i = 0; i < valueColumns.length; i++) kinds[valueColumns[i]!] = i;
  const stamps = new Float64Array(BATCH);
  const values = valueColumns.map(() => new Float64Array(BATCH));
  const batch: Batch = { mark, kinds, width: width ?? 0, stamps, values, count: 0, lastRowAt: 0 };
  let known: KnownStamp | null = null;
  let rows = 0;
  let lastCell = '';

  return {
    rows: () => rows,
    lastCell: () => lastCell,
    read(bytes, from, end, line) {
      const view = viewOf(bytes);
      let at = from;
      let alike = MIN_ROWS_ALIKE;
      rows = 0;
      while (at < end) {
        batch.count = 0;
        if (known) at = readRows(bytes, view, at, end, known, batch);
        const { count } = batch;
        for (let i = 0; i < stores.length && count > 0; i++) {
          stores[i]!.pushRows(stamps, values[i]!, count, line + rows);
        }
        rows += count;
        alike += count;
        if (count === BATCH || at === end) continue;
        const learnt = alike < MIN_ROWS_ALIKE ? null : readStamp(cellOf(bytes, at, stampColumn, mark));
        if (!learnt) break;
        known = learnt;
        alike = 0;
      }
      if (rows > 0) lastCell = cellOf(bytes, batch.lastRowAt, valueColumns.at(-1)!, mark);
      return at;
    },
  };
}

/** Reads rows into the batch until it is full or one is not plain, and returns where that one begins. */
function readRows(
  bytes: Uint8Array,
  view: DataView,
  from: number,
  end: number,
  known: KnownStamp,
  batch: Batch,
): number {
  let at = from;
  let count = 0;
  for (; count < BATCH && at < end; count++) {
    const next = readRow(bytes, view, at, end, known, batch, count);
    if (next < 0) break;
    batch.lastRowAt = at;
    at = next;
  }
  batch.count = count;
  return at;
}

/** Reads the row that begins here into a slot of the batch. Returns where the next begins; -1: it is not plain. */
function readRow(
  bytes: Uint8Array,
  view: DataView,
  from: number,
  end: number,
  known: KnownStamp,
  { mark, kinds, width, stamps, values }: Batch,
  slot: number,
): number {
  let i = from;
  for (let column = 0; ; column++) {
    const kind = column < kinds.length ? kinds[column]! : PASSED_OVER;
    if (kind >= 0) i = numberInBytes(bytes, i, mark, values[kind]!, slot);
    else if (kind === STAMP) {
      const timeMs = i + known.length < end ? timeInBytes(view, i, known) : -1;
      if (timeMs < 0) return -1;
      stamps[slot] = known.baseMs + timeMs;
      i += known.length;
    } else i = cellEnd(bytes, i, mark);
    if (i < 0) return -1;
    const code = bytes[i++];
    if (code === mark) continue;
    const isEnd = code === LF || (code === CR && bytes[i++] === LF);
    return isEnd && column + 1 >= kinds.length && (width === 0 || column + 1 === width) ? i : -1;
  }
}

/** Offset of the end of the cell that begins here, or of its first byte that is not plain. */
function cellEnd(bytes: Uint8Array, from: number, mark: number): number {
  let i = from;
  for (; ; i++) {
    const code = bytes[i]!;
    if (!(code !== mark && code !== LF && code !== CR && code !== QUOTE && code < FIRST_BEYOND_ASCII)) return i;
  }
}

/** The text of a row's cell, as far as it is plain. */
function cellOf(bytes: Uint8Array, rowFrom: number, column: number, mark: number): string {
  let from = rowFrom;
  for (let i = 0; ; i++) {
    const to = cellEnd(bytes, from, mark);
    if (i === column) return String.fromCharCode(...bytes.subarray(from, to));
    if (bytes[to] !== mark) return '';
    from = to + 1;
  }
}
