import { CsvError, parse } from 'csv-parse/sync';
import { findStamp, fixedZone, type Zone } from '../basics/calendar.js';
import { type Choice, RequestError } from '../basics/errors.js';
import { basisCode, type Medium } from '../basics/series.js';
import { celsiusFrom, type TemperatureUnit } from '../basics/units.js';
import { isTemperature, type ReadSeries, readingsSeries } from './read-series.js';
import type { RawReading } from './readings.js';
import type { ColumnReport, DroppedValue, FileReport } from './report.js';

/** What the caller says of the file. */
export interface CsvHints {
  readonly medium: Medium | null;
  readonly probeDepthCm: number | null;
  readonly unit: TemperatureUnit | null;
  /** A column's number, the first being 1, or its name. */
  readonly column: string | null;
  readonly timeColumn: string | null;
}

export interface CsvRead {
  readonly series: ReadSeries;
  readonly rows: number;
  readonly file: FileReport;
}

/** A column is of a kind if this share of its cells is. */
const MOSTLY = 0.9;
/** Enough rows to tell what a column holds. */
const SAMPLE_ROWS = 500;
const MOST_COLUMNS = 200;
const UNIT_IN_NAME = /(?:°|\bdeg(?:rees)?\b)\s*([CFK])\b|[([]\s*([CFK])\s*[)\]]|[_ ]([CFK])$/i;
const NUMBER = /^[+-]?\d+(\.\d+)?$/;

/**
 * Reads a logger's file in its plain form: a header line, commas, ISO stamps, one column of temperatures.
 *
 * A cell that is no temperature is left out and told; what changes every value (unit, column) is asked where the file
 * does not prove it.
 *
 * @param text  The file.
 * @param hints What the caller says of it.
 * @param zone  The place's zone; without one the stamps' own offset serves.
 * @throws {RequestError} `not-csv`, `choose-unit`, `choose-column`, `time-zone-needed`, each saying what to send.
 */
export function readCsv(text: string, hints: CsvHints, zone: Zone | undefined): CsvRead {
  const [header, ...records] = recordsOf(text);
  if (!header || records.length === 0) {
    throw new RequestError(
      'not-csv',
      'The file has no rows under a header line. The first line must name the columns, for example "time,soil C".',
    );
  }
  const columns = header.cells.map((name, i) => describe(name, i, records));
  const timeColumn = timeColumnOf(columns, hints, zone);
  const column = temperatureColumnOf(columns, hints);
  const medium = hints.medium ?? mediumOf(column);
  const unit = column.unit ?? hints.unit ?? askUnit(column, records);
  if (hints.unit && column.unit && hints.unit !== column.unit) {
    throw new RequestError(
      'not-understood',
      `The column "${column.name}" says °${column.unit}, but unit=${hints.unit} was sent; they must agree.`,
      [{ parameter: 'unit', detail: `Send ${column.unit}, or leave it out.` }],
    );
  }
  const { raw, dropped, stampZone } = valuesOf(records, timeColumn.index - 1, column.index - 1, unit, zone);
  const placeZone = zone ?? stampZone;
  if (raw.length < 2 || !placeZone) {
    throw new RequestError(
      'not-csv',
      `Only ${raw.length} rows have both a stamp and a temperature; ${dropped[0] ? `line ${dropped[0].line}: ${dropped[0].why}` : 'send more'}.`,
    );
  }
  return {
    series: readingsSeries(raw, {
      medium,
      probeDepthCm: hints.probeDepthCm,
      origin: 'measured',
      unit,
      zone: placeZone,
    }),
    rows: records.length,
    file: {
      delimiter: ',',
      decimalMark: '.',
      encoding: 'utf-8',
      headerLine: header.line,
      timeColumn: timeColumn.index,
      column: column.index,
      columns,
      dateOrder: 'ymd',
      clock: zone ? 'local' : 'offset',
      dropped,
    },
  };
}

interface FileRecord {
  readonly line: number;
  readonly cells: readonly string[];
}

function recordsOf(text: string): FileRecord[] {
  try {
    const parsed = parse(text, {
      bom: true,
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
      max_record_size: 100_000,
    });
    return (parsed as unknown as { record: string[]; info: { lines: number } }[]).map(({ record, info }) => ({
      line: info.lines,
      cells: record.slice(0, MOST_COLUMNS),
    }));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = typeof error.lines === 'number' ? error.lines : undefined;
    throw new RequestError(
      'not-csv',
      `The file cannot be split into cells${line === undefined ? '' : ` at line ${line}`}. Look for a quotation mark that is not closed, or a file that is not text.`,
      line === undefined ? [] : [{ line, detail: 'The cells end here.' }],
    );
  }
}

function describe(name: string, i: number, records: readonly FileRecord[]): ColumnReport {
  const cells = records.slice(0, SAMPLE_ROWS).map((record) => record.cells[i] ?? '');
  const filled = cells.filter((cell) => cell !== '');
  const share = (test: (cell: string) => boolean): number => filled.filter(test).length / filled.length;
  const looksLike =
    filled.length === 0
      ? 'empty'
      : share((cell) => findStamp(cell, UTC) !== undefined) >= MOSTLY
        ? 'time'
        : share((cell) => NUMBER.test(cell)) >= MOSTLY
          ? 'number'
          : 'text';
  const unit = unitOf(name);
  return { index: i + 1, name, looksLike, ...(unit ? { unit } : {}) };
}

const UTC = fixedZone(0);

function unitOf(name: string): TemperatureUnit | undefined {
  const match = UNIT_IN_NAME.exec(name);
  return (match?.[1] ?? match?.[2] ?? match?.[3])?.toUpperCase() as TemperatureUnit | undefined;
}

function timeColumnOf(columns: readonly ColumnReport[], hints: CsvHints, zone: Zone | undefined): ColumnReport {
  const times = columns.filter((column) => column.looksLike === 'time');
  const chosen = hints.timeColumn === null ? undefined : named(columns, hints.timeColumn, 'timeColumn');
  if (chosen) return chosen;
  if (times.length === 1) return times[0]!;
  if (times.length > 1) throw askColumn('timeColumn', 'More than one column holds dates and times.', times);
  const example = zone ? '2027-08-03 14:30' : '2027-08-03T14:30-02:00';
  throw new RequestError('not-csv', `No column holds ISO dates and times such as ${example}.`, [
    { parameter: 'timeColumn', detail: `The columns are ${columns.map((column) => `"${column.name}"`).join(', ')}.` },
  ]);
}

function temperatureColumnOf(columns: readonly ColumnReport[], hints: CsvHints): ColumnReport {
  if (hints.column !== null) return named(columns, hints.column, 'column');
  const numbers = columns.filter((column) => column.looksLike === 'number');
  if (numbers.length === 1) return numbers[0]!;
  if (numbers.length > 1) throw askColumn('column', 'More than one column holds numbers.', numbers);
  throw new RequestError('not-csv', 'No column holds numbers with a decimal point, so no temperatures were found.', [
    { parameter: 'column', detail: `The columns are ${columns.map((column) => `"${column.name}"`).join(', ')}.` },
  ]);
}

function named(columns: readonly ColumnReport[], wanted: string, parameter: string): ColumnReport {
  const found =
    columns.find((column) => String(column.index) === wanted) ?? columns.find((column) => column.name === wanted);
  if (found) return found;
  throw new RequestError('not-understood', `There is no column "${wanted}" in the file.`, [
    { parameter, detail: `Send a number from 1 to ${columns.length}, or one of the names in the header line.` },
  ]);
}

/** Where the thermometer was, if the column's name says so. */
function mediumOf({ name }: ColumnReport): Medium {
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

function askColumn(parameter: string, detail: string, columns: readonly ColumnReport[]): RequestError {
  const choices = columns.map(
    (column): Choice => ({
      value: String(column.index),
      reads: column.name,
      consequence: `column ${column.index}, "${column.name}", is used`,
    }),
  );
  return new RequestError('choose-column', `${detail} Say which with ${parameter}.`, [{ parameter, detail, choices }]);
}

function askUnit(column: ColumnReport, records: readonly FileRecord[]): never {
  const values = records.flatMap((record) =>
    NUMBER.test(record.cells[column.index - 1] ?? '') ? [Number(record.cells[column.index - 1])] : [],
  );
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const low = values.reduce((a, b) => Math.min(a, b));
  const high = values.reduce((a, b) => Math.max(a, b));
  const detail = `The file does not say whether the column "${column.name}" is in °C, °F or K.`;
  const units: readonly [TemperatureUnit, string][] = [
    ['C', 'degrees Celsius'],
    ['F', 'degrees Fahrenheit'],
    ['K', 'kelvin'],
  ];
  throw new RequestError('choose-unit', `${detail} Send unit=C, unit=F or unit=K.`, [
    {
      parameter: 'unit',
      detail,
      choices: units.map(([value, reads]) => ({
        value,
        reads,
        consequence: `minimum ${celsiusFrom[value](low).toFixed(1)}, mean ${celsiusFrom[value](mean).toFixed(1)}, maximum ${celsiusFrom[value](high).toFixed(1)} °C`,
      })),
    },
  ]);
}

function valuesOf(
  records: readonly FileRecord[],
  timeIndex: number,
  valueIndex: number,
  unit: TemperatureUnit,
  zone: Zone | undefined,
): { raw: RawReading[]; dropped: DroppedValue[]; stampZone: Zone | undefined } {
  const raw: RawReading[] = [];
  const dropped: DroppedValue[] = [];
  let stampZone: Zone | undefined;
  const toCelsius = celsiusFrom[unit];
  const measured = basisCode('measured');
  for (const { line, cells } of records) {
    const stampText = cells[timeIndex] ?? '';
    const valueText = cells[valueIndex] ?? '';
    const drop = (value: string, why: string) => dropped.push({ line, value: value.slice(0, 60), why });
    const stamp = findStamp(stampText, zone);
    if (!stamp && findStamp(stampText, UTC)) {
      throw new RequestError(
        'time-zone-needed',
        `The stamp "${stampText}" at line ${line} has no offset from UTC. Send timeZone, for example timeZone=Etc/GMT%2B2.`,
        [{ parameter: 'timeZone', line, detail: 'Stamps without an offset need the zone of the place.' }],
      );
    }
    if (!stamp) drop(stampText, 'no date and time');
    else if (valueText === '') drop(valueText, 'no value');
    else if (!NUMBER.test(valueText)) drop(valueText, 'not a number');
    else if (!isTemperature(toCelsius(Number(valueText)))) drop(valueText, 'no temperature of soil or air');
    else {
      stampZone ??= fixedZone(stamp.offsetMinutes);
      raw.push({ atMs: stamp.ms, valueC: toCelsius(Number(valueText)), basis: measured });
    }
  }
  return { raw, dropped, stampZone };
}
