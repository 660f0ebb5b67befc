import { type Choice, RequestError } from '../../basics/errors.js';
import type { Fact } from '../../basics/fact.js';
import { fileQuestion, readingsRefusal } from '../readings-facts.js';
import type { Column } from './columns.js';

const MAX_NAMES = 20;

/** The column of a number, the first being 1, or of a name. */
export function columnCalled(columns: readonly Column[], wanted: string, parameter: string): Column {
  const found =
    columns.find(({ index }) => String(index + 1) === wanted) ??
    columns.find(({ name }) => name === wanted) ??
    columns.find(({ name }) => name.trim().toLowerCase() === wanted.trim().toLowerCase());
  if (found) return found;
  throw noSuchColumn(
    columns.map(({ name }) => name),
    wanted,
    parameter,
  );
}

export function noSuchColumn(names: readonly string[], wanted: string, parameter: string): RequestError {
  const listed = names
    .slice(0, MAX_NAMES)
    .map((name, i) => `"${name.slice(0, 60) || i + 1}"`)
    .join(', ');
  return new RequestError('not-understood', readingsRefusal('not-understood.no-such-column', { column: wanted }), [
    {
      parameter,
      detail: readingsRefusal('not-understood.no-such-column.field', { count: names.length, columns: listed }),
    },
  ]);
}

/** The columns' names, as they are listed where none of them fits. */
export const columnNames = (columns: readonly Column[]): string =>
  columns
    .map(({ name, index }) => `"${name || index + 1}"`)
    .slice(0, MAX_NAMES)
    .join(', ');

export const askColumn = (parameter: 'column' | 'timeColumn', detail: Fact, choices: readonly Choice[]): RequestError =>
  new RequestError(
    'choose-column',
    [detail, fileQuestion('choose-column.send', { parameter })],
    [{ parameter, detail, choices }],
  );
