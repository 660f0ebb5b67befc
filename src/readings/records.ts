import Papa from 'papaparse';
import { RequestError } from '../basics/errors.js';

/** What stands between two cells; a blank means a run of blanks. */
export type Delimiter = ',' | ';' | '\t' | '|' | ' ';

/** Takes a record and the line it begins on, the first of the file being 1. The row is used again for the next record. */
export type TakeRecord = (row: readonly string[], line: number) => void;

/** Splits text into records as it comes. */
export interface RecordReader {
  read(text: string, isLast: boolean, take: TakeRecord): void;
}

const LONGEST_LINE = 1_000_000;
/** A quotation mark that stays open for longer than this was none. */
const LONGEST_QUOTED = 4096;
/** After so many marks that were none, marks are taken as they are. */
const MOST_STRAY_MARKS = 50;

/**
 * A reader of records. Text with quotation marks is split by a library; text without them, which is nearly all there
 * is, needs no more than its delimiters found, and no cells beyond the last that is wanted. A quotation mark that
 * never closes spoils its own line only.
 *
 * @param delimiter  What stands between two cells.
 * @param lastColumn Cells after this one, from 0, may be left out.
 */
export function recordReader(delimiter: Delimiter, lastColumn = Infinity): RecordReader {
  let held = '';
  let line = 1;
  let strayMarks = 0;
  const row: string[] = [];

  /** Takes the records of whole lines; gives back what belongs to a record that is not whole yet. */
  function takeQuoted(text: string, isLast: boolean, take: TakeRecord): string {
    let rest = text;
    for (;;) {
      const options = {
        delimiter,
        newline: '\n' as const,
        ...(strayMarks >= MOST_STRAY_MARKS ? { fastMode: true } : {}),
      };
      const { data, errors } = Papa.parse<string[]>(rest, options);
      const open = errors.find(({ code }) => code === 'MissingQuotes');
      const whole = open ? open.row! : data.length;
      for (let i = 0; i < whole; i++) {
        take(data[i]!, line);
        line += 1 + data[i]!.reduce((sum, cell) => sum + breaksIn(cell), 0);
      }
      if (!open) return '';
      if (whole > 0) rest = rest.slice(Papa.parse<string[]>(rest, { ...options, preview: whole }).meta.cursor);
      if (!isLast && rest.length <= LONGEST_QUOTED) return rest;
      strayMarks++;
      const end = rest.indexOf('\n');
      take((end < 0 ? rest : rest.slice(0, end)).split(delimiter), line++);
      if (end < 0) return '';
      rest = rest.slice(end + 1);
    }
  }

  function takePlain(text: string, take: TakeRecord): void {
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
        row[count++] = text.slice(start, Math.min(next, end));
        if (next >= end || count > lastColumn) break;
        start = next + 1;
      }
      if (row.length !== count) row.length = count;
      take(row, line++);
      from = end + 1;
    }
  }

  function takeBlanks(text: string, take: TakeRecord): void {
    for (const one of text.split('\n')) take(cellsBetweenBlanks(one), line++);
  }

  return {
    read(text, isLast, take) {
      const all = held + text;
      const cut = isLast ? all.length : all.lastIndexOf('\n');
      if (cut < 0) {
        refuseLongLine(all, line);
        held = all;
        return;
      }
      held = isLast ? '' : all.slice(cut + 1);
      const whole = all.slice(0, isLast && all.endsWith('\n') ? cut - 1 : cut);
      if (whole === '' && isLast) return;
      if (delimiter === ' ') takeBlanks(whole, take);
      else if (whole.includes('"')) {
        const rest = takeQuoted(whole, isLast, take);
        if (rest !== '') held = `${rest}\n${held}`;
      } else takePlain(whole, take);
      refuseLongLine(held, line);
    },
  };
}

/** All records of a text, and the line that each begins on. */
export function recordsIn(text: string, delimiter: Delimiter): { rows: string[][]; lines: number[] } {
  const [rows, lines]: [string[][], number[]] = [[], []];
  recordReader(delimiter).read(text, true, (row, line) => {
    rows.push([...row]);
    lines.push(line);
  });
  return { rows, lines };
}

export function refuseLongLine(text: string, line: number): void {
  if (text.length <= LONGEST_LINE) return;
  throw new RequestError(
    'not-csv',
    `Line ${line} is longer than a million characters. Is the file text, with one row of readings to a line?`,
    [{ line, detail: 'The line has no end.' }],
  );
}

/** Cells between runs of blanks; a quoted cell keeps its own. */
const cellsBetweenBlanks = (line: string): string[] =>
  line.includes('"')
    ? (line.match(/"[^"]*"|\S+/g) ?? ['']).map((cell) => cell.replaceAll('"', ''))
    : line.trim().split(/\s+/);

function breaksIn(cell: string): number {
  let count = 0;
  for (let i = cell.indexOf('\n'); i >= 0; i = cell.indexOf('\n', i + 1)) count++;
  return count;
}
