import Papa from 'papaparse';
import { RequestError } from '../../basics/errors.js';
import { readingsRefusal } from '../readings-facts.js';

/** Character between two cells; a blank means a run of blanks. */
export type Delimiter = ',' | ';' | '\t' | '|' | ' ';

/** Takes a row, its line, the first of the file being 1, and how many cells it has. The row is used again for the next. */
export type TakeRow = (row: readonly string[], line: number, width: number) => void;

/** Splits text into rows as it comes. */
export interface RowReader {
  read(text: string, isLast: boolean, take: TakeRow): void;
  /** The line that comes next. */
  line(): number;
  /** Counts lines that were read elsewhere. Only between two lines. */
  skip(lines: number): void;
}

const MAX_LINE = 1_000_000;

/**
 * A reader of rows, one to a line: a quotation mark that does not close spoils its own line only. Text with quotation
 * marks is split by a library; text without them, which is nearly all there is, needs no more than its delimiters
 * found, and no cells beyond the last that is wanted.
 *
 * @param delimiter  What stands between two cells.
 * @param lastColumn Cells after this one, from 0, may be left out.
 */
export function rowReader(delimiter: Delimiter, lastColumn = Infinity): RowReader {
  let held = '';
  let line = 1;
  const row: string[] = [];

  function takeQuoted(text: string, take: TakeRow): void {
    const { data, errors } = parsed(text, delimiter);
    const isOneToALine = errors.length === 0 && !data.some((cells) => cells.some((cell) => cell.includes('\n')));
    const rows = isOneToALine ? data : text.split('\n').map((one) => cellsOfLine(one, delimiter));
    for (const cells of rows) take(cells, line++, cells.length);
  }

  function takeBlanks(text: string, take: TakeRow): void {
    for (const one of text.split('\n')) {
      const cells = cellsBetweenBlanks(one);
      take(cells, line++, cells.length);
    }
  }

  function takePlain(text: string, take: TakeRow): void {
    let next = -1;
    for (let from = 0; from <= text.length; ) {
      const newline = text.indexOf('\n', from);
      const end = newline < 0 ? text.length : newline;
      let count = 0;
      let start = from;
      for (;;) {
        if (next < start) {
          next = text.indexOf(delimiter, start);
          if (next < 0) next = Infinity;
        }
        if (count <= lastColumn) row[count] = text.slice(start, Math.min(next, end));
        count++;
        if (next >= end) break;
        start = next + 1;
      }
      const taken = Math.min(count, lastColumn + 1);
      if (row.length !== taken) row.length = taken;
      take(row, line++, count);
      from = end + 1;
    }
  }

  return {
    line: () => line,
    skip(lines) {
      line += lines;
    },
    read(text, isLast, take) {
      const all = held + text;
      const cut = isLast ? all.length : all.lastIndexOf('\n');
      if (cut < 0) {
        refuseLongLine(all, line);
        held = all;
        return;
      }
      held = isLast ? '' : all.slice(cut + 1);
      refuseLongLine(held, line);
      const whole = all.slice(0, isLast && all.endsWith('\n') ? cut - 1 : cut);
      if (whole === '' && isLast) return;
      if (delimiter === ' ') takeBlanks(whole, take);
      else if (whole.includes('"')) takeQuoted(whole, take);
      else takePlain(whole, take);
    },
  };
}

/** All records of a text and the line that each begins on. In quotation marks a cell may hold line breaks, as headers do. */
export function recordsIn(text: string, delimiter: Delimiter): { rows: string[][]; lines: number[] } {
  const whole = text.endsWith('\n') ? text.slice(0, -1) : text;
  const { data, errors } = delimiter === ' ' ? NOTHING : Papa.parse<string[]>(whole, { delimiter, newline: '\n' });
  const isSplit = delimiter !== ' ' && errors.length === 0;
  const rows = isSplit ? data : whole.split('\n').map((line) => cellsOfLine(line, delimiter));
  const lines: number[] = [];
  let line = 1;
  for (const row of rows) {
    lines.push(line);
    line += 1 + row.reduce((sum, cell) => sum + cell.split('\n').length - 1, 0);
  }
  return { rows, lines };
}

const NOTHING = { data: [], errors: [] };

export function refuseLongLine(text: string, line: number): void {
  if (text.length <= MAX_LINE) return;
  throw new RequestError('not-csv', readingsRefusal('not-csv.long-line', { line }), [
    { line, detail: readingsRefusal('not-csv.long-line.field') },
  ]);
}

/** The cells of one line; where its quotation marks are wrong they are taken as they stand. */
function cellsOfLine(line: string, delimiter: Delimiter): string[] {
  if (delimiter === ' ') return cellsBetweenBlanks(line);
  if (!line.includes('"')) return line.split(delimiter);
  const { data, errors } = parsed(line, delimiter);
  return errors.length === 0 ? data[0]! : line.split(delimiter);
}

/** Rows of a text without its last line end. It is put back, so that the last line is read as it is in mid-text. */
function parsed(text: string, delimiter: Delimiter): { data: string[][]; errors: readonly unknown[] } {
  const { data, errors } = Papa.parse<string[]>(`${text}\n`, { delimiter, newline: '\n' });
  data.pop();
  return { data, errors };
}

/** Cells between runs of blanks; a quoted cell keeps its own. */
const cellsBetweenBlanks = (line: string): string[] =>
  line.includes('"')
    ? (line.match(/"[^"]*"|\S+/g) ?? ['']).map((cell) => cell.replaceAll('"', ''))
    : line.trim().split(/\s+/);
