import { RequestError } from '../../basics/errors.js';
import { saysMissing } from '../columns/temperature-words.js';
import { fileChoice, fileQuestion } from '../readings-facts.js';
import { type FixedForm, fixedFormOf } from '../time/fixed-forms.js';
import { stampReader } from '../time/read-stamp.js';
import { stampFormOf } from '../time/stamp-form.js';
import { readsAsNumber } from './cell-kinds.js';
import { aligned, headerAbove, MOSTLY, trimmedWidth } from './header.js';
import { type Delimiter, recordsIn } from './records.js';

/** Layout of a file, by its first lines. */
export interface Table {
  readonly delimiter: Delimiter;
  /** The line that names the columns; null where none does. */
  readonly headerLine: number | null;
  /** The columns' names, '' where one has none; the lines of a header that has several are joined. */
  readonly names: readonly string[];
  /** The cells under the names: units, kinds of mean. */
  readonly units: readonly string[];
  /** The lines above the header, and all that stands in a legend beside the rows. */
  readonly preamble: readonly string[];
  readonly firstDataLine: number;
  /** The first rows of readings. */
  readonly sample: readonly (readonly string[])[];
  /** A decimal comma that is also the delimiter tears a number in two: from this column on, pairs of cells are one. */
  readonly tornFrom: number | null;
  readonly fixed: FixedForm | null;
}

const delimiters: readonly Delimiter[] = [';', '\t', ',', '|', ' '];
const SAMPLE_ROWS = 1000;
const CLEARLY_BETTER = 0.5;
/** Stamps, values, and all rows of one width. */
const BEST_SCORE = 7;
/** Number of cells that show the kind of a column. */
const TELLING_CELLS = 60;

/**
 * Finds the table in the first lines of a file; undefined where none of the delimiters gives one.
 *
 * @param head        Whole lines, ended by LF.
 * @param decimalMark What the caller says of it; null: nothing.
 * @throws {RequestError} `choose-decimal-mark` where commas may part cells or the digits of a number.
 */
export function tableOf(head: string, decimalMark: '.' | ',' | null): Table | undefined {
  const fixed = fixedFormOf(head);
  if (fixed) return tableOfFixed(head, fixed);
  let best: { table: Table; score: number } | undefined;
  for (const delimiter of delimiters) {
    if (best && best.score + CLEARLY_BETTER >= BEST_SCORE) break;
    if (!head.includes(delimiter)) continue;
    const found = tableSplitBy(delimiter, head, decimalMark);
    // Blanks stand in stamps and remarks too: what comes later in the list must be much better.
    if (found && (!best || found.score > best.score + CLEARLY_BETTER)) best = found;
  }
  return best?.table;
}

/** The columns of stamps and of numbers among rows, by what their cells look like. */
function tableSplitBy(
  delimiter: Delimiter,
  head: string,
  decimalMark: '.' | ',' | null,
): { table: Table; score: number } | undefined {
  const { rows, lines } = recordsIn(head, delimiter);
  const width = usualWidth(rows);
  if (width < 2) return undefined;
  const usual = rows.slice(rows.length >> 1).filter((row) => trimmedWidth(row) === width);
  if (usual.length === 0) return undefined;
  const cellsOf = (column: number): string[] => usual.slice(0, TELLING_CELLS).map((row) => row[column] ?? '');
  const columns = Array.from({ length: width }, (_, column) => cellsOf(column));
  const forms = columns.map(stampFormOf);
  const stamps = forms.flatMap((form, column) => (form && form.kind !== 'clock' ? [{ column, form }] : []));
  const numbers = columns.flatMap((cells, column) => (isMostly(cells, readsAsNumber) ? [column] : []));
  const hasClock = forms.some((form) => form?.kind === 'clock');
  if (stamps.length === 0 && numbers.length < (hasClock ? 1 : 2)) return undefined;
  const readers = stamps.map(({ column, form }) => ({ column, reader: stampReader(form) }));
  const isData = (row: readonly string[]): boolean =>
    readers.length > 0
      ? readers.some(({ column, reader }) => !Number.isNaN(reader.read(row[column] ?? '')))
      : numbers.every((column) => readsAsNumber(row[column] ?? '') || saysMissing(row[column] ?? '')) &&
        numbers.some((column) => readsAsNumber(row[column] ?? ''));
  let first = rows.findIndex((row) => row.length > 1 && isData(row));
  if (first < 0) return undefined;
  // A first row whose stamp or value is spoilt is still a row, and no header.
  while (first > 0 && isSpoiltRow(rows[first - 1]!, numbers, width)) first--;
  const usualShare = rows.filter((row) => trimmedWidth(row) === width).length / rows.length;
  const values = numbers.filter((column) => !stamps.some((stamp) => stamp.column === column));
  const score = (stamps.length > 0 ? 4 : 0) + (values.length > 0 ? 2 : 0) + usualShare;
  const found = headerAbove(rows, first, width, delimiter);
  const sample = rows.slice(first, first + SAMPLE_ROWS).filter(isData);
  const tornFrom = delimiter === ',' ? tornColumn(found.names, sample, width, decimalMark) : null;
  const header = tornFrom === null ? aligned(found, sample, width) : found;
  return {
    score,
    table: {
      delimiter,
      headerLine: header.index === null ? null : lines[header.index]!,
      names: named(header.names, tornFrom === null ? width : header.names.length),
      units: header.units,
      preamble: [
        ...rows.slice(0, header.top).map((row) => row.join(delimiter)),
        ...legendBeside(rows.slice(first), header.names.length || width),
      ],
      firstDataLine: lines[first]!,
      sample: tornFrom === null ? sample : sample.map((row) => mended(row, tornFrom)),
      tornFrom,
      fixed: null,
    },
  };
}

function tableOfFixed(head: string, fixed: FixedForm): Table {
  const { rows } = recordsIn(head, fixed.delimiter);
  const data = rows.slice(fixed.headerLines).filter((row) => row.some((cell) => cell !== ''));
  return {
    delimiter: fixed.delimiter,
    headerLine: null,
    names: fixed.names,
    units: fixed.units,
    preamble: [],
    firstDataLine: fixed.headerLines + 1,
    sample: (fixed.unfold ? data.flatMap(fixed.unfold) : data).slice(0, SAMPLE_ROWS),
    tornFrom: null,
    fixed,
  };
}

/** True if a row has the width and the numbers of readings, and digits in place of their stamps. */
function isSpoiltRow(row: readonly string[], numbers: readonly number[], width: number): boolean {
  if (trimmedWidth(row) !== width || !/\d{2}/.test(row.find((cell) => !readsAsNumber(cell)) ?? '00')) return false;
  const read = numbers.filter((column) => readsAsNumber(row[column] ?? '')).length;
  return read > 0 && read >= 0.6 * numbers.length;
}

/** The width that most rows of the lower half have, of those with more than one cell: what stands above may have any. */
function usualWidth(rows: readonly (readonly string[])[]): number {
  const counts = new Map<number, number>();
  for (const row of rows.slice(rows.length >> 1)) {
    const width = trimmedWidth(row);
    if (width > 1) counts.set(width, (counts.get(width) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 0;
}

/** True if most of the cells with a value are of this kind. */
function isMostly(cells: readonly string[], test: (cell: string) => boolean): boolean {
  const said = cells.filter((cell) => !saysMissing(cell));
  return said.length > 0 && said.filter(test).length >= MOSTLY * said.length;
}

const named = (names: readonly string[], width: number): string[] =>
  Array.from({ length: Math.max(width, names.length) }, (_, i) => names[i] ?? '');

/** Text that stands to the right of the readings. */
const legendBeside = (rows: readonly (readonly string[])[], width: number): string[] =>
  rows.slice(0, 40).flatMap((row) => row.slice(width).filter((cell) => /\p{L}{3}/u.test(cell)));

/**
 * The column from which pairs of cells are torn numbers, or null.
 * Whole numbers come without their comma, so shorter rows prove that the comma parts no cells there.
 */
function tornColumn(
  names: readonly string[],
  sample: readonly (readonly string[])[],
  width: number,
  decimalMark: '.' | ',' | null,
): number | null {
  const tornCount = width - names.length;
  if (names.length < 2 || tornCount < 1 || tornCount >= names.length || decimalMark === '.') return null;
  const from = names.length - tornCount;
  const full = sample.filter((row) => row.length === width);
  const mayBeTorn =
    full.length > 0 && full.every((row) => row.slice(from).every((cell) => /^\s*-?\d{1,3}\s*$/.test(cell)));
  if (!mayBeTorn) return null;
  if (decimalMark === ',' || tornCount > 1 || sample.some((row) => row.length === names.length)) return from;
  if (carriesOver(full.map((row) => [Number(row[from]), Number(row[from + 1])]))) return from;
  const [first] = full as [readonly string[]];
  const detail = fileQuestion('choose-decimal-mark.torn', { cells: first.slice(from).join(',') });
  throw new RequestError(
    'choose-decimal-mark',
    [detail, fileQuestion('choose-decimal-mark.send')],
    [
      {
        parameter: 'decimalMark',
        detail,
        choices: [
          fileChoice(',', 'choose-decimal-mark.choice', { decimalMark: 'comma', number: first.slice(from).join('.') }),
          fileChoice('.', 'choose-decimal-mark.choice', { decimalMark: 'point', number: first[from]! }),
        ],
      },
    ],
  );
}

/** True if the second number begins anew whenever the first goes up, as tenths do, and ends high whenever it goes down. */
function carriesOver(pairs: readonly (readonly [number, number])[]): boolean {
  let [carries, others] = [0, 0];
  for (let i = 1; i < pairs.length; i++) {
    const [whole, part] = [pairs[i]![0] - pairs[i - 1]![0], pairs[i]![1] - pairs[i - 1]![1]];
    if (Math.abs(whole) !== 1 || part === 0) continue;
    if (whole * part < 0) carries++;
    else others++;
  }
  return carries >= 5 && carries >= 9 * others;
}

/** A row with its torn numbers joined by their comma. */
export function mended(row: readonly string[], tornFrom: number): string[] {
  const cells = row.slice(0, tornFrom);
  const torn = row.slice(tornFrom);
  if (torn.length === 1) return [...cells, torn[0]!];
  for (let i = 0; i < torn.length; i += 2)
    cells.push(torn[i + 1] === undefined ? torn[i]! : `${torn[i]},${torn[i + 1]}`);
  return cells;
}
