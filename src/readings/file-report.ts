import type { Channel } from './channels.js';
import type { DateOrder } from './date-order.js';
import type { ColumnReport, DoubtfulValue, FileReport } from './report.js';
import type { RowsRead } from './rows-read.js';

/** What was understood of a file, as it is told. */
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
    dateOrder: order,
    clock,
    dropped: dropped.first,
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
