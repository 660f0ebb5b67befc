import { stampFormOf } from '../time/stamp-form.js';
import { isRule, isUnitsRow, readsAsNumber } from './cell-kinds.js';
import type { Delimiter } from './records.js';

const MAX_HEADER_LINES = 4;
/** Share of cells that makes a row or a column one of a kind. */
export const MOSTLY = 0.8;

/** The lines that name the columns. */
export interface Header {
  readonly index: number | null;
  readonly names: readonly string[];
  readonly units: readonly string[];
  /** The first row of the header: what stands above it is preamble. */
  readonly top: number;
}

/**
 * A header with more names than any row has cells, or with fewer than there are numbers, cannot be laid over the rows: it
 * is kept as a line above them, and its names are not used.
 */
export function aligned(header: Header, rows: readonly (readonly string[])[], width: number): Header {
  if (header.index === null) return header;
  const longest = rows.reduce((most, row) => Math.max(most, row.length), width);
  const named = trimmedWidth(header.names);
  const hasNamelessNumbers = rows.some((row) => row.slice(named, width).some(readsAsNumber));
  if (header.names.length <= longest && !hasNamelessNumbers) return header;
  return { index: null, names: [], units: header.units, top: header.index + 1 };
}

/** The rows that name the columns: the nearest above the readings that are neither blank, a rule, nor units. */
export function headerAbove(
  rows: readonly (readonly string[])[],
  first: number,
  width: number,
  delimiter: Delimiter,
): Header {
  let names: string[] = [];
  let units: string[] = [];
  let index: number | null = null;
  let top = first;
  for (let i = first - 1; i >= 0 && i >= first - MAX_HEADER_LINES - 2; i--) {
    const row = headerCells(rows[i]!, width, delimiter);
    if (isRule(row)) {
      if (index !== null) break;
      continue;
    }
    const filled = row.filter((cell) => cell !== '');
    const isOfNames =
      filled.length >= 2 && row.length <= 2 * width + 2 && filled.filter(readsAsNumber).length < MOSTLY * filled.length;
    const hasNamesAbove = i > 0 && trimmedWidth(rows[i - 1]!) >= 2;
    if (index === null && filled.length > 0 && row.length >= 2 && hasNamesAbove && isUnitsRow(filled)) {
      units = row.map((cell, column) => [cell, units[column] ?? ''].filter(Boolean).join(' '));
      top = i;
      continue;
    }
    if (index === null) {
      if (!isOfNames || filled.some(startsLikeStamp)) break;
      [index, names, top] = [i, row, i];
      continue;
    }
    if (isRemark(rows[i]!) && !isRemark(rows[index]!)) break;
    // A second line of names stands above only where the first one leaves something open.
    const isOpen = names.some((name) => name === '') || new Set(names).size < names.length;
    if (!isOpen || !isOfNames || row.length !== names.length || filled.some(startsLikeStamp)) break;
    names = names.map((name, column) => [spread(row, column), name].filter(Boolean).join(' '));
    top = i;
  }
  return { index, names, units, top };
}

const isRemark = (row: readonly string[]): boolean => /^\s*#/.test(row[0] ?? '');

/** A heading over several columns stands in the first of them; the others are empty. */
const spread = (row: readonly string[], column: number): string =>
  row.slice(0, column + 1).findLast((cell) => cell !== '') ?? '';

const startsLikeStamp = (cell: string): boolean => stampFormOf([cell]) !== undefined;

/** A header's cells, trimmed; a name that holds the delimiter itself is joined again where that makes the count fit. */
function headerCells(row: readonly string[], width: number, delimiter: Delimiter): string[] {
  const cells = row.map((cell, i) => (i === 0 ? cell.replace(/^\s*#+\s*(?=\S)/, '') : cell));
  if (delimiter === ',' && cells.length > width) {
    const joined: string[] = [];
    for (const cell of cells) {
      if (joined.length > 0 && cell.startsWith(' ') && cell.trim() !== '') joined.push(`${joined.pop()},${cell}`);
      else joined.push(cell);
    }
    if (joined.length >= 2 && joined.length >= width - 1) return joined.map((cell) => cell.trim());
  }
  return cells.map((cell) => cell.trim());
}

/** The number of a row's cells without the empty ones at its end. */
export function trimmedWidth(row: readonly string[]): number {
  let width = row.length;
  while (width > 0 && row[width - 1]!.trim() === '') width--;
  return width;
}
