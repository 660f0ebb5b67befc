import { CsvError, parse } from 'csv-parse/sync';
import { RequestError } from '../basics/errors.js';

/** One record of a file, and the line it ends on. */
export interface FileRecord {
  readonly line: number;
  readonly cells: readonly string[];
}

/** A file is read in one go for now: more records than this are refused. A hundred days of minutes. */
const MOST_RECORDS = 150_000;
const MOST_COLUMNS = 200;
const LONGEST_RECORD = 100_000;

/**
 * Splits a comma-separated file into records, blank lines left out.
 *
 * @throws {RequestError} `not-csv` where it cannot be split, `too-large` where it has too many records.
 */
export function recordsOf(text: string): FileRecord[] {
  try {
    const parsed = parse(text, {
      bom: true,
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
      to: MOST_RECORDS + 1,
      max_record_size: LONGEST_RECORD,
    }) as unknown as { record: string[]; info: { lines: number } }[];
    if (parsed.length > MOST_RECORDS) {
      throw new RequestError(
        'too-large',
        `The file has more than ${MOST_RECORDS} rows. Send fewer days, or hourly readings.`,
      );
    }
    return parsed.map(({ record, info }) => ({ line: info.lines, cells: record.slice(0, MOST_COLUMNS) }));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw faultOf(error);
  }
}

function faultOf(error: CsvError): RequestError {
  if (error.code === 'CSV_QUOTE_NOT_CLOSED') {
    return new RequestError(
      'not-csv',
      'The file cannot be split into cells. Look for a quotation mark that is not closed.',
    );
  }
  const line = typeof error.lines === 'number' ? error.lines : 1;
  return new RequestError(
    'not-csv',
    `The file cannot be split into cells at line ${line}. Look there for a stray quotation mark or a line without an end, or for a file that is not text.`,
    [{ line, detail: 'The cells cannot be told apart here.' }],
  );
}
