import type { Channel } from './columns/channel.js';
import type { ColumnReport, DoubtfulValue, FileReport } from './report.js';
import type { RowsRead } from './text/rows-read.js';
import type { DateOrder } from './time/date-order.js';

/** The report of what was understood of a file. */
export function fileReport(
  read: RowsRead,
  order: DateOrder | null,
  clock: FileReport['clock'],
  doubtful: { list: readonly DoubtfulValue[]; count: number },
): FileReport {
  const { table, columns, time, plan, dropped } = read;
  const [main] = plan.channels as [Channel];
  const isComma = (columns[main.column]?.cells ?? []).some((cell) => /\d,\d/.test(cell));
  return {
    delimiter: table.delimiter,
    decimalMark: isComma || table.tornFrom !== null ? ',' : '.',
    encoding: read.encoding,
    headerLine: table.headerLine,
    timeColumn: time.columns[0]! + 1,
    column: main.column + 1,
    columns: columns.map((column) => columnReport(column, plan.all)),
    dateOrder: writtenOrder(read, order),
    clock,
    dropped: [...dropped.first].sort((a, b) => a.line - b.line),
    droppedCount: dropped.count,
    doubtful: doubtful.list,
    doubtfulCount: doubtful.count,
  };
}

function columnReport({ index, name, kind, form }: RowsRead['columns'][number], all: readonly Channel[]): ColumnReport {
  const meaning = all.find(({ column }) => column === index)?.meaning;
  const temperature = meaning && meaning.lure === null && (meaning.saysTemperature || meaning.medium !== null);
  const looksLike =
    kind === 'stamp'
      ? form!.kind === 'calendar' && !form!.hasTime
        ? 'date'
        : 'time'
      : kind === 'clock'
        ? 'time of day'
        : kind === 'number' && meaning?.lure
          ? meaning.lure
          : kind === 'number' && temperature
            ? 'temperature'
            : kind;
  const unit = meaning?.unit.unit;
  return { index: index + 1, name, looksLike, ...(unit && !meaning.lure ? { unit } : {}) };
}

/** Dates with a month's name are told in the order in which they are written. */
function writtenOrder({ time, table }: RowsRead, order: DateOrder | null): DateOrder | null {
  if (time.form.month !== 'name') return order;
  const first = table.sample.map(time.textOf).find((text) => text.trim() !== '') ?? '';
  return /^\W*\d{4}/.test(first)
    ? 'ymd'
    : /^\W*(?:[a-z]{2,}\.?,?\s+)?\d/i.test(first) && !/^\W*[a-z]+\.?\s+\d{1,2}(?:,|\s+\d)/i.test(first)
      ? 'dmy'
      : 'mdy';
}
