import { RequestError } from '../../basics/errors.js';
import { readingsRefusal } from '../readings-facts.js';
import type { FileHints } from '../text/rows-read.js';
import { type Table, tableOf } from '../text/table.js';
import { titleOf } from '../text/title.js';
import { type DateOrder, possibleOrders } from '../time/date-order.js';
import { type StampReader, stampReader } from '../time/read-stamp.js';
import { type TimePlan, timePlanOf } from '../time/time-plan.js';
import type { ChannelPlan } from './channel.js';
import { channelPlanOf } from './channels.js';
import { type Column, columnsOf } from './columns.js';

/** Properties of all rows of a file, as its head shows them. */
export interface FileLayout {
  readonly table: Table;
  readonly columns: readonly Column[];
  readonly time: TimePlan;
  readonly plan: ChannelPlan;
  /** The title of the block of rows that the caller asked for; null: all rows. */
  readonly wantedBlock: string | null;
  /** Stamps are a count since 1970. */
  readonly isEpoch: boolean;
  /** Stamps carry an offset from UTC. */
  readonly carriesOffset: boolean;
  /** The order of day and month, where the head settles it. */
  readonly knownOrder: DateOrder | null;
  /** The number of cells that each row must have; null: any number. */
  readonly evenWidth: number | null;
  /** Only whole rows can be taken apart, not just the cells wanted of them. */
  readonly needsWholeRows: boolean;
}

const MAX_COLUMNS = 2000;
/** Number of rows that show whether all have one width. */
const MIN_ROWS_OF_ONE_WIDTH = 5;
/** Up to this share of rows may have another width than the rest. */
const MAX_SHARE_OF_OTHER_WIDTHS = 0.1;

/**
 * The layout of a file.
 *
 * @param head  Its first lines, each whole.
 * @param hints What the caller says of it; wins over what the file says.
 * @throws {RequestError} `not-csv` or `no-readings` where the head shows no table; `choose-column` where several columns
 *   could be meant.
 */
export function fileLayoutOf(head: string, hints: FileHints): FileLayout {
  const table = readableTable(head, hints);
  const columns = columnsOf(table);
  const time = timePlanOf(table, columns, hints.timeColumn);
  const { plan, wantedBlock } = planFor(table, columns, time, hints);
  const isEpoch = time.form.kind.startsWith('epoch');
  const orders = possibleOrders(time.form);
  return {
    table,
    columns,
    time,
    plan,
    wantedBlock,
    isEpoch,
    carriesOffset: !isEpoch && mostCarryOffset(table.sample.map(time.textOf), stampReader(time.form)),
    knownOrder: hints.dateOrder ?? (orders.length === 1 || time.form.year === 'first' ? orders[0]! : null),
    // A row of another width than nearly all has lost or gained a delimiter: its cells stand in other columns.
    evenWidth: table.tornFrom === null && !table.fixed?.unfold ? evenWidthOf(table.sample) : null,
    needsWholeRows: table.tornFrom !== null || table.fixed !== null,
  };
}

/** The table in a file's first lines. @throws {RequestError} `not-csv` with what the file seems to be instead. */
function readableTable(head: string, hints: FileHints): Table {
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
  if (table.names.length > MAX_COLUMNS) {
    const columns = table.names.length;
    throw new RequestError('not-csv', readingsRefusal('not-csv.many-columns', { columns, maxColumns: MAX_COLUMNS }));
  }
  return table;
}

/** A name that is no column's may be the title over a block of rows, which shows only as the file goes on. */
function planFor(
  table: Table,
  columns: readonly Column[],
  time: TimePlan,
  hints: FileHints,
): Pick<FileLayout, 'plan' | 'wantedBlock'> {
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

/** The width of nearly all rows, in cells; null where rows differ. Some loggers add their number to the first row only. */
function evenWidthOf(rows: readonly (readonly string[])[]): number | null {
  const widths = rows.map((row) => row.length).sort((a, b) => a - b);
  const middle = widths[widths.length >> 1]!;
  const others = widths.filter((width) => width !== middle).length;
  const isEven = others <= Math.max(1, MAX_SHARE_OF_OTHER_WIDTHS * rows.length);
  return isEven && rows.length >= MIN_ROWS_OF_ONE_WIDTH ? middle : null;
}

/** Do most stamps carry an offset from UTC? */
function mostCarryOffset(texts: readonly string[], reader: StampReader): boolean {
  const offsets = texts.filter((text) => !Number.isNaN(reader.read(text)) && !Number.isNaN(reader.offsetMinutes));
  return 2 * offsets.length > texts.length;
}
