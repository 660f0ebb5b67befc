import { findStamp, fixedZone, type Zone } from '../basics/calendar.js';
import { type Choice, type Note, RequestError } from '../basics/errors.js';
import { basisCode, type Medium } from '../basics/series.js';
import { celsiusFrom, type TemperatureUnit } from '../basics/units.js';
import {
  depthOf,
  describeColumns,
  isNumber,
  isStamp,
  mediumOf,
  temperatureColumnOf,
  timeColumnOf,
} from './csv-columns.js';
import { type FileRecord, recordsOf } from './csv-records.js';
import { isTemperature, type ReadSeries, readingsSeries, refuseOtherUnit } from './read-series.js';
import type { RawReading } from './readings.js';
import { type ColumnReport, type DroppedValue, type FileReport, reportOf } from './report.js';

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

const unitNames: readonly [TemperatureUnit, string][] = [
  ['C', 'degrees Celsius'],
  ['F', 'degrees Fahrenheit'],
  ['K', 'kelvin'],
];
/** A unit is worth asking about if this share of the values can be temperatures in it, and their mean a place's [°C]. */
const PLAUSIBLE_SHARE = 0.9;
const COLDEST_MEAN_C = -40;
const HOTTEST_MEAN_C = 45;

/**
 * Reads a logger's file in its plain form: a header line, commas, ISO stamps, one column of temperatures.
 *
 * A cell that is no temperature is left out and told; what changes every value (unit, column) is asked where the file
 * does not say it. What the caller says wins over the header, and is told.
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
  refuseOtherShape(header, records);
  const columns = describeColumns(header, records);
  const timeColumn = timeColumnOf(columns, hints.timeColumn);
  const column = temperatureColumnOf(columns, hints.column);
  if (!isStamp(records[0]!.cells[timeColumn.index - 1] ?? '')) {
    throw new RequestError(
      'not-csv',
      `Line ${records[0]!.line} holds no date and time in the column "${timeColumn.name}". Only one line, the header, may stand above the readings for now; take the others out.`,
      [{ line: records[0]!.line, detail: 'Is this line a second header?' }],
    );
  }
  const medium = hints.medium ?? mediumOf(column);
  const shape = { medium, probeDepthCm: hints.probeDepthCm ?? depthOf(column), origin: 'measured' as const };
  const readAs = (unit: TemperatureUnit): ReadSeries & Pick<FileReport, 'dropped'> => {
    const { raw, dropped, stampZone } = valuesOf(records, timeColumn.index - 1, column.index - 1, unit, zone);
    return { ...readingsSeries(raw, { ...shape, unit, zone: zone ?? stampZone }), dropped };
  };
  const unit = hints.unit ?? column.unit ?? askUnit(column, records, readAs);
  const { dropped, ...series } = readAs(unit);
  if (series.days.length === 0) {
    throw new RequestError(
      'not-csv',
      `No row has both a stamp and a temperature in °${unit}; line ${dropped[0]!.line}: ${dropped[0]!.why} ("${dropped[0]!.value}").`,
    );
  }
  refuseOtherUnit(series, []);
  return {
    series: { ...series, warnings: [...series.warnings, ...unitWarnings(column, unit)] },
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

/** Files of other shapes are told what the plain one is, rather than misread. */
function refuseOtherShape(header: FileRecord, records: readonly FileRecord[]): void {
  if (header.cells.some((cell) => isStamp(cell) || isNumber(cell))) {
    throw new RequestError(
      'not-csv',
      'The first line holds readings, not names. Put a header line such as "time,soil C" above it.',
      [{ line: header.line, detail: 'The header must name the columns.' }],
    );
  }
  const other =
    header.cells.length === 1 && records[0]!.cells.length === 1 ? /[;\t]/.exec(header.cells[0]!)?.[0] : undefined;
  if (other) {
    const name = other === ';' ? 'semicolons' : 'tabs';
    throw new RequestError(
      'not-csv',
      `The cells seem to be separated by ${name}. Save the file with commas between them for now.`,
      [{ line: header.line, detail: `There are ${name} in the header line.` }],
    );
  }
}

/** Asks for the unit, with what the file would say in each that is possible. */
function askUnit(
  column: ColumnReport,
  records: readonly FileRecord[],
  readAs: (unit: TemperatureUnit) => ReadSeries & Pick<FileReport, 'dropped'>,
): never {
  const numbers = records.filter((record) => isNumber(record.cells[column.index - 1] ?? '')).length;
  const choices = unitNames.flatMap(([value, reads]): Choice[] => {
    const read = readAs(value);
    const { min, mean, max, used } = reportOf(read, records.length);
    if (min === null || mean === null || max === null || used < PLAUSIBLE_SHARE * numbers) return [];
    if (mean < COLDEST_MEAN_C || mean > HOTTEST_MEAN_C) return [];
    const consequence = `minimum ${min.toFixed(1)}, mean ${mean.toFixed(1)}, maximum ${max.toFixed(1)} °C`;
    return [{ value, reads, consequence }];
  });
  if (choices.length === 0) {
    throw new RequestError(
      'not-csv',
      `The column "${column.name}" holds no temperatures. Send column= with the number or name of another.`,
      [{ parameter: 'column', detail: 'Its values are no temperatures in °C, °F or K.' }],
    );
  }
  const detail = `The file does not say whether the column "${column.name}" is in °C, °F or K.`;
  const ways = choices.map(({ value }) => `unit=${value}`).join(' or ');
  throw new RequestError('choose-unit', `${detail} Send ${ways}.`, [{ parameter: 'unit', detail, choices }]);
}

function unitWarnings(column: ColumnReport, unit: TemperatureUnit): Note[] {
  if (column.unit === undefined || column.unit === unit) return [];
  return [
    {
      code: 'unit-against-header',
      text: `The column "${column.name}" says °${column.unit}, but it was read in °${unit} as asked. If the header is wrong, correct it in the file.`,
    },
  ];
}

function valuesOf(
  records: readonly FileRecord[],
  timeIndex: number,
  valueIndex: number,
  unit: TemperatureUnit,
  zone: Zone | undefined,
): { raw: RawReading[]; dropped: DroppedValue[]; stampZone: Zone } {
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
    if (!stamp && isStamp(stampText)) {
      throw new RequestError(
        'time-zone-needed',
        `The stamp "${stampText}" at line ${line} has no offset from UTC. Send timeZone, for example timeZone=Etc/GMT%2B2.`,
        [{ parameter: 'timeZone', line, detail: 'Stamps without an offset need the zone of the place.' }],
      );
    }
    if (!stamp) drop(stampText, 'no date and time');
    else if (valueText === '') drop(valueText, 'no value');
    else if (!isNumber(valueText)) drop(valueText, 'not a number');
    else if (!isTemperature(toCelsius(Number(valueText)))) drop(valueText, 'no temperature of soil or air');
    else {
      stampZone ??= fixedZone(stamp.offsetMinutes);
      raw.push({ atMs: stamp.ms, valueC: toCelsius(Number(valueText)), basis: measured });
    }
  }
  return { raw, dropped, stampZone: stampZone ?? fixedZone(0) };
}
