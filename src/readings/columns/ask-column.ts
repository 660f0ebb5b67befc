import { type Choice, RequestError } from '../../basics/errors.js';
import type { Column } from './columns.js';

const MOST_NAMES = 20;

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
    .slice(0, MOST_NAMES)
    .map((name, i) => `"${name.slice(0, 60) || i + 1}"`)
    .join(', ');
  return new RequestError('not-understood', `There is no column "${wanted}" in the file.`, [
    { parameter, detail: `Send a number from 1 to ${names.length}, or one of the names ${listed}.` },
  ]);
}

export const askColumn = (
  parameter: 'column' | 'timeColumn',
  detail: string,
  choices: readonly Choice[],
): RequestError =>
  new RequestError('choose-column', `${detail} Say which with ${parameter}.`, [{ parameter, detail, choices }]);
