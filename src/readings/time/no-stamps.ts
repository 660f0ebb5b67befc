import { RequestError } from '../../basics/errors.js';
import { columnNames } from '../columns/ask-column.js';
import type { Column } from '../columns/columns.js';
import { readingsRefusal } from '../readings-facts.js';
import { readNumber } from '../text/number-cell.js';

/** Why no stamps were found: a counter from the start of the logger, times without dates, or neither. */
export function noStamps(columns: readonly Column[]): RequestError {
  const clock = columns.find(({ kind }) => kind === 'clock');
  if (clock) {
    return new RequestError('no-readings', readingsRefusal('no-readings.times-of-day', { column: calledOf(clock) }), [
      { parameter: 'timeColumn', detail: readingsRefusal('no-readings.times-of-day.field') },
    ]);
  }
  const counter = columns.find(
    ({ kind, cells, name }) =>
      kind === 'number' &&
      (/uptime|millis|elapsed|seconds|\bms\b|^t$|time/i.test(name) || (name === '' && isRising(cells))),
  );
  if (counter) {
    return new RequestError('no-readings', readingsRefusal('no-readings.counter', { column: calledOf(counter) }), [
      { parameter: 'timeColumn', detail: readingsRefusal('no-readings.counter.field') },
    ]);
  }
  return new RequestError('no-readings', readingsRefusal('no-readings.no-date-column'), [
    { parameter: 'timeColumn', detail: readingsRefusal('no-readings.columns', { columns: columnNames(columns) }) },
  ]);
}

/** A column's name, or its number where it has none. */
export const calledOf = ({ name, index }: Column): string => name || String(index + 1);

function isRising(cells: readonly string[]): boolean {
  const values = cells.map(readNumber).filter((value) => !Number.isNaN(value));
  return values.length > 2 && values.every((value, i) => i === 0 || value > values[i - 1]!);
}
