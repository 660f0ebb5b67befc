import type { FileLayout } from '../columns/file-layout.js';
import { askAboutLateLabels } from '../columns/late-labels.js';
import { plainStamp } from '../time/stamp-offset.js';
import { type PlainRows, plainRows } from './plain-rows.js';
import { type RowReader, rowReader } from './records.js';
import type { FileHints, RowsRead } from './rows-read.js';
import { noRowsYet, type RowsSoFar } from './rows-so-far.js';
import { takeLine } from './take-line.js';
import { dropTornEnd } from './torn-end.js';

/** Reads the rows of a file whose layout is known. */
export interface BodyReader {
  read(text: string, isLast: boolean): void;
  /** Reads plain rows from bytes, where no line is begun; returns where the first row begins that is not plain. */
  readPlain(bytes: Uint8Array, from: number, end: number): number;
  /** All that was read. @throws {RequestError} where rows further down make it doubtful which ones are meant. */
  finish(encoding: RowsRead['encoding']): RowsRead;
}

/**
 * A reader of a file's rows, from its first line on.
 *
 * @param expectedRows More and fewer may come.
 */
export function bodyReader(layout: FileLayout, hints: FileHints, expectedRows: number): BodyReader {
  const soFar = noRowsYet(layout, expectedRows);
  const records = recordsFor(layout);
  const plain = plainRowsFor(soFar);
  const take = (cells: readonly string[], line: number, width: number): void => takeLine(soFar, cells, line, width);
  let isCutOff = false;

  return {
    read(text, isLast) {
      if (text !== '') isCutOff = !text.endsWith('\n');
      records.read(text, isLast, take);
    },
    readPlain(bytes, from, end) {
      if (!plain || soFar.title) return from;
      const to = plain.read(bytes, from, end, records.line());
      if (to === from) return from;
      soFar.rows += plain.rows();
      records.skip(plain.rows());
      soFar.lastLine = records.line() - 1;
      soFar.lastCell = plain.lastCell();
      return to;
    },
    finish(encoding) {
      if (isCutOff) dropTornEnd(soFar);
      askAboutLateLabels(soFar.late, layout, hints);
      for (const store of soFar.stores) store.close();
      return rowsReadOf(soFar, encoding);
    },
  };
}

function recordsFor({ table, time, plan, needsWholeRows }: FileLayout): RowReader {
  const wanted = [...time.columns, ...plan.labelColumns, ...plan.channels.map(({ column }) => column)];
  return rowReader(table.delimiter, needsWholeRows ? Infinity : Math.max(1, ...wanted));
}

/** A reader of plain rows into the stores; null where the layout has none. */
function plainRowsFor(soFar: RowsSoFar): PlainRows | null {
  const { table, time, plan, needsWholeRows, isEpoch, evenWidth: width } = soFar.layout;
  const { delimiter } = table;
  const [stampColumn, ...besideStamp] = time.columns;
  const isPlain =
    plan.labelColumns.length === 0 && !needsWholeRows && !isEpoch && delimiter !== ' ' && besideStamp.length === 0;
  if (!isPlain) return null;
  const valueColumns = plan.channels.map(({ column }) => column);
  return plainRows({ delimiter, stampColumn: stampColumn!, valueColumns, width }, soFar.stores, (stamp) =>
    plainStamp(soFar, stamp),
  );
}

function rowsReadOf(soFar: RowsSoFar, encoding: RowsRead['encoding']): RowsRead {
  const { layout, stores, rows, dropped, stampOffset, blocks } = soFar;
  const { table, columns, time, plan, wantedBlock, carriesOffset, knownOrder } = layout;
  const areInstants = carriesOffset && knownOrder !== null;
  return {
    table,
    columns,
    time,
    plan,
    wantedBlock,
    stores,
    rows,
    dropped,
    stampOffset,
    blocks,
    areInstants,
    encoding,
  };
}
