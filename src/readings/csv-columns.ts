import { findStamp, fixedZone } from '../basics/calendar.js';
import { type Choice, RequestError } from '../basics/errors.js';
import type { Medium } from '../basics/series.js';
import type { TemperatureUnit } from '../basics/units.js';
import type { FileRecord } from './csv-records.js';
import type { ColumnReport } from './report.js';

/** A column is of a kind if this share of its cells is. */
const MOSTLY = 0.9;
/** Enough rows to tell what a column holds. */
const SAMPLE_ROWS = 500;
const UNIT_IN_NAME =
  /(?:°|\bdeg(?:rees)?\b)\s*([CFK])\b|[([]\s*([CFK])\s*[)\]]|(?:temp(?:erature)?|soil|air|cm)[_ ]([CFK])$/i;
const DEPTH_IN_NAME = /(\d+(?:\.\d+)?)\s*cm\b/i;
const UTC = fixedZone(0);

export const isNumber = (cell: string): boolean => /^[+-]?\d+(\.\d+)?$/.test(cell);
/** A date and time, with or without an offset. */
export const isStamp = (cell: string): boolean => findStamp(cell, UTC) !== undefined;

/** What each column of a file looks like. */
export function describeColumns(header: FileRecord, records: readonly FileRecord[]): ColumnReport[] {
  return header.cells.map((name, i) => {
    const filled = records.slice(0, SAMPLE_ROWS).flatMap((record) => record.cells[i] || []);
    const mostly = (test: (cell: string) => boolean): boolean => filled.filter(test).length >= MOSTLY * filled.length;
    const looksLike = filled.length === 0 ? 'empty' : mostly(isStamp) ? 'time' : mostly(isNumber) ? 'number' : 'text';
    const unit = unitOf(name);
    return { index: i + 1, name, looksLike, ...(unit ? { unit } : {}) };
  });
}

function unitOf(name: string): TemperatureUnit | undefined {
  const match = UNIT_IN_NAME.exec(name);
  return (match?.[1] ?? match?.[2] ?? match?.[3])?.toUpperCase() as TemperatureUnit | undefined;
}

/** How deep the thermometer was, if the column's name says so [cm]. */
export function depthOf({ name }: ColumnReport): number | null {
  const depth = DEPTH_IN_NAME.exec(name)?.[1];
  return depth === undefined ? null : Number(depth);
}

/** Where the thermometer was, if the column's name says so; else it is asked. */
export function mediumOf({ name }: ColumnReport): Medium {
  const isSoil = /soil|ground|seedbed/i.test(name);
  const isAir = /\bair\b|outdoor|screen/i.test(name);
  if (isSoil !== isAir) return isSoil ? 'soil' : 'air';
  const detail = `Neither the column "${name}" nor the query says whether the thermometer was in soil or in air.`;
  throw new RequestError('choose-medium', `${detail} Send medium=soil or medium=air.`, [
    {
      parameter: 'medium',
      detail,
      choices: [
        { value: 'soil', reads: 'a probe in the soil', consequence: 'the values are taken as soil temperatures' },
        { value: 'air', reads: 'a thermometer in air', consequence: 'the values are taken as air temperatures' },
      ],
    },
  ]);
}

/** The column of stamps: the one named, else the only one that holds any. */
export function timeColumnOf(columns: readonly ColumnReport[], wanted: string | null): ColumnReport {
  if (wanted !== null) return columnCalled(columns, wanted, 'timeColumn');
  const times = columns.filter((column) => column.looksLike === 'time');
  if (times.length === 1) return times[0]!;
  if (times.length > 1) throw askColumn('timeColumn', 'More than one column holds dates and times.', times);
  throw new RequestError('not-csv', 'No column holds ISO dates and times such as 2027-08-03T14:30-02:00.', [
    { parameter: 'timeColumn', detail: `The columns are ${namesOf(columns)}.` },
  ]);
}

/** The column of temperatures: the one named, else the only one that holds numbers. */
export function temperatureColumnOf(columns: readonly ColumnReport[], wanted: string | null): ColumnReport {
  if (wanted !== null) return columnCalled(columns, wanted, 'column');
  const numbers = columns.filter((column) => column.looksLike === 'number');
  if (numbers.length === 1) return numbers[0]!;
  if (numbers.length > 1) throw askColumn('column', 'More than one column holds numbers.', numbers);
  throw new RequestError('not-csv', 'No column holds numbers with a decimal point, so no temperatures were found.', [
    { parameter: 'column', detail: `The columns are ${namesOf(columns)}.` },
  ]);
}

function columnCalled(columns: readonly ColumnReport[], wanted: string, parameter: string): ColumnReport {
  const found = columns.find(({ index }) => String(index) === wanted) ?? columns.find(({ name }) => name === wanted);
  if (found) return found;
  throw new RequestError('not-understood', `There is no column "${wanted}" in the file.`, [
    { parameter, detail: `Send a number from 1 to ${columns.length}, or one of the names ${namesOf(columns)}.` },
  ]);
}

function askColumn(parameter: string, detail: string, columns: readonly ColumnReport[]): RequestError {
  const choices = columns.map(
    ({ index, name }): Choice => ({
      value: String(index),
      reads: name,
      consequence: `column ${index}, "${name}", is used`,
    }),
  );
  return new RequestError('choose-column', `${detail} Say which with ${parameter}.`, [{ parameter, detail, choices }]);
}

const MOST_NAMES = 20;
const namesOf = (columns: readonly ColumnReport[]): string =>
  columns
    .slice(0, MOST_NAMES)
    .map(({ name }) => `"${name.slice(0, 60)}"`)
    .join(', ');
