import { RequestError } from '../../basics/errors.js';
import { fileQuestion, readingsRefusal } from '../readings-facts.js';
import { askChannel } from './ask-channel.js';
import { columnCalled, noSuchColumn } from './ask-column.js';
import type { Channel } from './channel.js';
import { type Column, meaningOf } from './columns.js';

/** The channel that the caller named: by its label, its column's number or its column's name. */
export function channelCalled(
  all: readonly Channel[],
  columns: readonly Column[],
  labelColumns: readonly number[],
  wanted: string,
): Channel {
  const byLabel =
    all.find(({ label }) => label === wanted) ??
    all.find(({ label }) => label?.toLowerCase() === wanted.trim().toLowerCase());
  if (byLabel) return byLabel;
  if (labelColumns.length > 0 && all.length > 0) {
    const ofColumn = all.filter(({ column }) => String(column + 1) === wanted || columns[column]!.name === wanted);
    if (ofColumn.length === 1) return ofColumn[0]!;
    // Rows further down may carry labels that the first rows do not.
    if (ofColumn.length === 0 && !/^\d+$/.test(wanted)) {
      return {
        column: all[0]!.column,
        label: wanted,
        name: wanted,
        meaning: meaningOf(wanted, ''),
        isFlat: false,
        isCounter: false,
        min: 0,
        max: 0,
      };
    }
    if (ofColumn.length > 1) throw askChannel(fileQuestion('choose-column.several-sensors'), ofColumn, null);
  }
  const column = columnCalled(columns, wanted, 'column');
  const channel = all.find((one) => one.column === column.index);
  if (channel) return channel;
  if (column.kind === 'text' || column.kind === 'stamp' || column.kind === 'clock' || column.kind === 'unit') {
    const name = column.name || String(column.index + 1);
    throw new RequestError('no-readings', readingsRefusal('no-readings.no-numbers', { column: name }), [
      { parameter: 'column', detail: readingsRefusal('no-readings.no-numbers.field') },
    ]);
  }
  if (all.length === 0)
    throw noSuchColumn(
      columns.map(({ name }) => name),
      wanted,
      'column',
    );
  return {
    column: column.index,
    label: null,
    name: column.name,
    meaning: meaningOf(column.name, ''),
    isFlat: false,
    isCounter: false,
    min: 0,
    max: 0,
  };
}
