import type { Zone } from '../basics/calendar.js';
import { RequestError } from '../basics/errors.js';
import type { Fact } from '../basics/fact.js';
import { ask, type ChannelPlan, channelPlanOf, labelOf } from './columns/channels.js';
import { type Column, columnsOf } from './columns/columns.js';
import { missingMarks, saysMissing } from './columns/temperature-words.js';
import { fileChoice, fileQuestion, readingsRefusal, rowFact } from './readings-facts.js';
import { settle } from './settle/settle.js';
import { type TextReader, textReader } from './text/encoding.js';
import { unifyLineEnds } from './text/line-ends.js';
import { readNumber } from './text/number-cell.js';
import { plainFirst } from './text/plain-first.js';
import { plainRows } from './text/plain-rows.js';
import { refuseLongLine, rowReader } from './text/records.js';
import { rowStore } from './text/row-store.js';
import { type Block, type DroppedList, drop, type FileHints, type FileRead, type RowsRead } from './text/rows-read.js';
import { mended, type Table, tableOf } from './text/table.js';
import { possibleOrders, wallOf } from './time/date-order.js';
import { type StampReader, stampReader } from './time/read-stamp.js';
import { type KnownStamp, knownStamp } from './time/stamp-in-bytes.js';
import { type TimePlan, timePlanOf } from './time/time-plan.js';

/** Reads a logger's file in pieces, as they arrive. */
export interface FileReader {
  /** @throws {RequestError} as soon as the file proves unreadable, or asks something that its first rows show. */
  push(bytes: Uint8Array): void;
  /** What was read, after pauses in which a server can answer others. */
  finish(): Generator<void, FileRead>;
}

/** So much of a file is looked at before its layout is settled. */
const HEAD_CHARACTERS = 200_000;
const HEAD_LINES = 1200;
const MOST_COLUMNS = 2000;
/** So many rows show whether all have one width. */
const FEW_ROWS = 5;
/** What a file is made of shows in its first bytes, which may come one by one. */
const SNIFFED_BYTES = 4096;
/** Rows further down may be shorter than the first by as much. */
const SPARE_ROWS = 1.05;
const MOST_LATE_LABELS = 60;
const LATE_ROWS = 20;

/**
 * A reader of one file.
 *
 * @param hints What the caller says of it; wins over what the file says.
 * @param zone  The place's zone; without one the zone or offset that the file names serves.
 * @param expectedBytes How long the file is said to be; more and fewer may come.
 */
export function fileReader(hints: FileHints, zone: Zone | undefined, expectedBytes = 0): FileReader {
  const unify = unifyLineEnds();
  let text: TextReader | undefined;
  let first: Uint8Array = new Uint8Array(0);
  let head = '';
  let body: Body | undefined;

  function take(piece: string, isLast: boolean): void {
    if (body) {
      body.take(piece, isLast);
      return;
    }
    head += piece;
    const isEnough = head.length >= HEAD_CHARACTERS || (head.length > 20_000 && linesIn(head) >= HEAD_LINES);
    if (!isLast && !isEnough) return;
    const cut = isLast ? head.length : head.lastIndexOf('\n') + 1;
    if (cut === 0 || !head.includes('\n')) refuseLongLine(head, 1);
    if (cut === 0 && !isLast) return;
    body = bodyOf(head.slice(0, cut), hints, expectedBytes);
    const all = head;
    head = '';
    body.take(all, isLast);
  }

  const readText = (bytes: Uint8Array): void => take(unify(text!.read(bytes, false), false), false);
  const readOn = plainFirst((bytes, from, end) => body!.takePlain(bytes, from, end), readText);

  return {
    push(bytes) {
      if (text) {
        if (body && text.hasAscii) readOn(bytes);
        else readText(bytes);
        return;
      }
      first = first.length === 0 ? bytes.slice() : Buffer.concat([first, bytes]);
      if (first.length < SNIFFED_BYTES) return;
      text = textReader(first);
      readText(first);
    },
    *finish() {
      const rest = text ? new Uint8Array(0) : first;
      text ??= textReader(first);
      take(unify(text.read(rest, true), true), true);
      yield;
      return yield* settle(body!.read(text.encoding()), hints, zone);
    },
  };
}

function linesIn(text: string): number {
  let count = 0;
  for (let i = text.indexOf('\n'); i >= 0; i = text.indexOf('\n', i + 1)) count++;
  return count;
}

/** What takes the rows, once the layout is known. */
interface Body {
  take(text: string, isLast: boolean): void;
  /** Takes plain rows from bytes, where no line is begun; returns where the first row begins that is not plain. */
  takePlain(bytes: Uint8Array, from: number, end: number): number;
  read(encoding: RowsRead['encoding']): RowsRead;
}

function bodyOf(head: string, hints: FileHints, expectedBytes: number): Body {
  const table = understood(head, hints);
  const columns = columnsOf(table);
  const time = timePlanOf(table, columns, hints.timeColumn);
  const { plan, wantedBlock } = planFor(table, columns, time, hints);
  const reader = stampReader(time.form);
  const wantedColumns = [...time.columns, ...plan.labelColumns, ...plan.channels.map(({ column }) => column)];
  const isWhole = table.tornFrom !== null || table.fixed !== null;
  const records = rowReader(table.delimiter, isWhole ? Infinity : Math.max(1, ...wantedColumns));
  const expectedRows = (SPARE_ROWS * expectedBytes * linesIn(head)) / head.length;
  const stores = plan.channels.map(() => rowStore(expectedRows));
  const dropped: DroppedList = { first: [], count: 0 };
  const channelOfLabel = new Map(plan.channels.map((channel, i) => [channel.label, i]));
  const knownLabels = new Set(plan.all.map(({ label }) => label));
  const late = new Map<string, string[][]>();
  const blocks: Block[] = [{ title: lastTitle(table.preamble), fromRow: 0, line: table.firstDataLine }];
  let title: { text: string; line: number } | null = null;
  let isCutOff = false;
  let lastLine = 0;
  let lastCell = '';
  let rows = 0;
  let stampOffset: number | null = null;

  const { tornFrom, fixed, firstDataLine } = table;
  const isLong = plan.labelColumns.length > 0;
  const { textOf } = time;
  const isEpoch = time.form.kind.startsWith('epoch');
  const carriesOffset = !time.form.kind.startsWith('epoch') && mostCarryOffset(table.sample.map(time.textOf), reader);
  // Where nearly all rows have one width, another one means a delimiter lost or gained: its cells stand in other columns.
  const evenWidth = table.tornFrom === null && !table.fixed?.unfold ? evenWidthOf(table.sample) : null;
  const [stampColumn, ...besideStamp] = time.columns;
  const mayBePlain = !isLong && !isWhole && !isEpoch && table.delimiter !== ' ' && besideStamp.length === 0;
  const plain = mayBePlain
    ? plainRows(
        {
          delimiter: table.delimiter,
          stampColumn: stampColumn!,
          valueColumns: plan.channels.map(({ column }) => column),
          width: evenWidth,
        },
        stores,
        plainStamp,
      )
    : null;
  const orders = possibleOrders(time.form);
  const knownOrder = hints.dateOrder ?? (orders.length === 1 || time.form.year === 'first' ? orders[0]! : null);

  /** What a stamp says of those of plain rows; null where its row is to be read from text. */
  function plainStamp(stamp: string): KnownStamp | null {
    const packed = reader.read(stamp);
    const offset = reader.offsetMinutes;
    if (Number.isNaN(packed) || Number.isNaN(offset) === carriesOffset) return null;
    const pattern = reader.likeLast();
    if (!carriesOffset) return knownStamp(stamp, packed, pattern);
    stampOffset ??= offset;
    if (knownOrder !== null) return knownStamp(stamp, wallOf(packed, knownOrder) - offset * 60_000, pattern);
    return offset === stampOffset ? knownStamp(stamp, packed, pattern) : null;
  }

  function takeRow(row: readonly string[], line: number, width: number): void {
    const stamp = textOf(row);
    let packed = reader.read(stamp);
    if (Number.isNaN(packed)) {
      takeAside(row, line, stamp);
      return;
    }
    if (!carriesOffset && !isEpoch && !Number.isNaN(reader.offsetMinutes)) {
      rows++;
      drop(dropped, line, stamp, rowFact('row.unexpected-offset'));
      return;
    }
    if (carriesOffset) {
      const offset = reader.offsetMinutes;
      if (Number.isNaN(offset)) {
        rows++;
        drop(dropped, line, stamp, rowFact('row.no-offset'));
        return;
      }
      stampOffset ??= offset;
      // The day of the shift is known only with the order of day and month; until then one offset must serve all.
      if (knownOrder !== null) packed = wallOf(packed, knownOrder) - offset * 60_000;
      else if (offset !== stampOffset) throw askOrderOfOffsets(line);
    }
    const isFirst = line === firstDataLine && width > evenWidth!;
    if (evenWidth !== null && width !== evenWidth && !isFirst) {
      rows++;
      drop(dropped, line, stamp, rowFact('row.other-width', { cells: width, usualCells: evenWidth }));
      return;
    }
    if (title) {
      blocks.push({ title: title.text, fromRow: stores[0]!.count, line });
      title = null;
    }
    if (!isLong) {
      rows++;
      for (let i = 0; i < stores.length; i++) takeValue(row, line, packed, i);
      return;
    }
    const label = labelOf(row, plan.labelColumns);
    const channel = channelOfLabel.get(label);
    if (channel === undefined) {
      if (!knownLabels.has(label)) keepLate(label, row);
      return;
    }
    rows++;
    takeValue(row, line, packed, channel);
  }

  function takeValue(row: readonly string[], line: number, packed: number, i: number): void {
    const cell = row[plan.channels[i]!.column];
    if (fixed?.quality && !fixed.quality.good.test((row[fixed.quality.column] ?? '').trim())) {
      drop(dropped, line, cell ?? '', rowFact('row.marked-bad'));
      return;
    }
    const value = cell === undefined ? NaN : readNumber(cell);
    if (Number.isNaN(value)) drop(dropped, line, cell ?? '', whyNoNumber(cell));
    else if (missingMarks.has(value)) drop(dropped, line, cell!, rowFact('row.missing-mark'));
    else {
      stores[i]!.push(packed, value, line);
      lastLine = line;
      lastCell = cell!;
    }
  }

  function keepLate(label: string, row: readonly string[]): void {
    const kept = late.get(label);
    if (kept) {
      if (kept.length < LATE_ROWS) kept.push([...row]);
    } else if (late.size < MOST_LATE_LABELS) late.set(label, [[...row]]);
  }

  /** A last line without an end may have lost digits: it counts only where it is written as fully as the others. */
  function dropTornEnd(): void {
    stores.forEach((store, i) => {
      const { column } = plan.channels[i]!;
      const others = table.sample.slice(0, -1).map((row) => row[column] ?? '');
      if (store.count === 0 || store.lineOf(store.count - 1) !== lastLine) return;
      const hasAll =
        fractionDigits([lastCell]) >= fractionDigits(others) && lastCell.trim().length >= shortestOf(others);
      if (hasAll) return;
      store.pop();
      drop(dropped, lastLine, lastCell, rowFact('row.cut-off'));
    });
  }

  /** A line that is no row of readings: a remark, a header again, a title, or a row whose stamp is spoilt. */
  function takeAside(row: readonly string[], line: number, stamp: string): void {
    const cells = row.map((cell) => cell.trim());
    const filled = cells.filter((cell) => cell !== '');
    if (filled.length === 0 || filled[0]!.startsWith('#')) return;
    const isHeaderAgain =
      table.names.length > 0 && filled.every((cell) => table.names.includes(cell) || table.units.includes(cell));
    if (isHeaderAgain) return;
    if (filled.length === 1 && !/^\W*\d/.test(filled[0]!)) title = { text: filled[0]!, line };
    rows++;
    drop(dropped, line, stamp || filled[0]!, rowFact('row.no-stamp'));
  }

  return {
    take(text, isLast) {
      if (text !== '') isCutOff = !text.endsWith('\n');
      records.read(text, isLast, (row, line, width) => {
        if (line < firstDataLine || (row.length === 1 && row[0] === '')) return;
        if (fixed?.unfold) for (const one of fixed.unfold(row)) takeRow(one, line, width);
        else takeRow(tornFrom === null ? row : mended(row, tornFrom), line, width);
      });
    },
    takePlain(bytes, from, end) {
      if (!plain || title) return from;
      const to = plain.read(bytes, from, end, records.line());
      if (to === from) return from;
      rows += plain.rows();
      records.skip(plain.rows());
      lastLine = records.line() - 1;
      lastCell = plain.lastCell();
      return to;
    },
    read(encoding) {
      if (isCutOff) dropTornEnd();
      if (late.size > 0 && hints.column === null) {
        // What came late may fit as well as what was chosen from the first rows; then it is asked.
        const sample = [...table.sample.slice(0, 500), ...[...late.values()].flat()];
        const again = channelPlanOf({ ...table, sample }, columns, time, hints);
        if (again.channels.length !== plan.channels.length) {
          throw ask(fileQuestion('choose-column.late'), again.channels, hints.medium);
        }
      }
      for (const store of stores) store.close();
      return {
        table,
        columns,
        time,
        plan,
        stores,
        rows,
        dropped,
        stampOffset,
        areInstants: carriesOffset && knownOrder !== null,
        encoding,
        blocks,
        wantedBlock,
      };
    },
  };
}

function askOrderOfOffsets(line: number): RequestError {
  const detail = fileQuestion('choose-date-order.several-offsets');
  const choices = (['dmy', 'mdy'] as const).map((dateOrder) =>
    fileChoice(dateOrder, 'choose-date-order.choice', { dateOrder, from: null, to: null }),
  );
  return new RequestError(
    'choose-date-order',
    [detail, fileQuestion('choose-date-order.send', { ways: 'dateOrder=dmy, dateOrder=mdy' })],
    [{ parameter: 'dateOrder', line, detail, choices }],
  );
}

/** The table in a file's first lines. @throws {RequestError} `not-csv` with what the file seems to be instead. */
function understood(head: string, hints: FileHints): Table {
  const start = head.trimStart().slice(0, 200).toLowerCase();
  if (start === '') throw new RequestError('not-csv', readingsRefusal('not-csv.empty'));
  if (/^<(?:!doctype|html|\?xml|body|div)/.test(start)) {
    throw new RequestError('not-csv', readingsRefusal('not-csv.web-page'));
  }
  if (/^[{[]\s*["{[]/.test(start)) {
    throw new RequestError('not-csv', readingsRefusal('not-csv.json'));
  }
  const table = tableOf(head, hints.decimalMark);
  if (!table && head.trim().split('\n').length < 2) {
    throw new RequestError('no-readings', readingsRefusal('no-readings.no-rows'));
  }
  if (!table) throw new RequestError('not-csv', readingsRefusal('not-csv.no-table'));
  if (table.names.length > MOST_COLUMNS) {
    const columns = table.names.length;
    throw new RequestError('not-csv', readingsRefusal('not-csv.many-columns', { columns, maxColumns: MOST_COLUMNS }));
  }
  return table;
}

/** A name that is no column's may be the title over a block of rows, which shows only as the file goes on. */
function planFor(
  table: Table,
  columns: readonly Column[],
  time: TimePlan,
  hints: FileHints,
): { plan: ChannelPlan; wantedBlock: string | null } {
  const isTitle =
    hints.column !== null &&
    table.preamble.some((line) => titleOf(line) !== '') &&
    !columns.some(
      ({ name, index }) =>
        name.toLowerCase() === hints.column!.trim().toLowerCase() || String(index + 1) === hints.column,
    );
  if (!isTitle) return { plan: channelPlanOf(table, columns, time, hints), wantedBlock: null };
  const plan = channelPlanOf(table, columns, time, { ...hints, column: null });
  if (plan.labelColumns.length > 0) return { plan: channelPlanOf(table, columns, time, hints), wantedBlock: null };
  return { plan, wantedBlock: hints.column };
}

const titleOf = (line: string): string => line.replace(/^[#\s]+/, '').replace(/[,;\s]+$/, '');
const lastTitle = (preamble: readonly string[]): string =>
  titleOf([...preamble].reverse().find((line) => titleOf(line) !== '') ?? '');

/** How many cells nearly all rows have; null where rows differ. Some loggers add their number to the first row only. */
function evenWidthOf(rows: readonly (readonly string[])[]): number | null {
  const widths = rows.map((row) => row.length).sort((a, b) => a - b);
  const middle = widths[widths.length >> 1]!;
  const others = widths.filter((width) => width !== middle).length;
  return others <= Math.max(1, 0.1 * rows.length) && rows.length >= FEW_ROWS ? middle : null;
}

/** Do most stamps carry an offset from UTC? */
function mostCarryOffset(texts: readonly string[], reader: StampReader): boolean {
  const offsets = texts.filter((text) => !Number.isNaN(reader.read(text)) && !Number.isNaN(reader.offsetMinutes));
  return 2 * offsets.length > texts.length;
}

/** The fewest characters that numbers among cells are written with. */
const shortestOf = (cells: readonly string[]): number =>
  Math.min(Infinity, ...cells.flatMap((cell) => (Number.isNaN(readNumber(cell)) ? [] : cell.trim().length)));

/** The fewest digits behind the mark that numbers among cells are written with. */
function fractionDigits(cells: readonly string[]): number {
  const numbers = cells.filter((cell) => !Number.isNaN(readNumber(cell)));
  return Math.min(Infinity, ...numbers.map((cell) => /[.,](\d+)/.exec(cell)?.[1]?.length ?? 0));
}

function whyNoNumber(cell: string | undefined): Fact {
  if (cell === undefined) return rowFact('row.too-short');
  if (cell.trim() === '') return rowFact('row.empty');
  return saysMissing(cell) ? rowFact('row.says-missing') : rowFact('row.no-number');
}
