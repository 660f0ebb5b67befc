import { rowFact } from '../readings-facts.js';
import { readNumber } from './number-cell.js';
import { drop } from './rows-read.js';
import type { RowsSoFar } from './rows-so-far.js';

/**
 * Takes the last line's values back where the line has no end and may have lost digits: they count only where the last
 * cell is written as fully as the others.
 */
export function dropTornEnd({ layout: { plan, table }, stores, dropped, lastLine, lastCell }: RowsSoFar): void {
  stores.forEach((store, i) => {
    const { column } = plan.channels[i]!;
    if (store.count === 0 || store.lineOf(store.count - 1) !== lastLine) return;
    const others = table.sample.slice(0, -1).map((row) => row[column] ?? '');
    const isWhole =
      fewestFractionDigits([lastCell]) >= fewestFractionDigits(others) &&
      lastCell.trim().length >= fewestCharacters(others);
    if (isWhole) return;
    store.pop();
    drop(dropped, lastLine, lastCell, rowFact('row.cut-off'));
  });
}

const numbersOf = (cells: readonly string[]): string[] => cells.filter((cell) => !Number.isNaN(readNumber(cell)));

/** The fewest characters that numbers among cells are written with. */
const fewestCharacters = (cells: readonly string[]): number =>
  Math.min(Infinity, ...numbersOf(cells).map((cell) => cell.trim().length));

/** The fewest digits behind the mark that numbers among cells are written with. */
const fewestFractionDigits = (cells: readonly string[]): number =>
  Math.min(Infinity, ...numbersOf(cells).map((cell) => /[.,](\d+)/.exec(cell)?.[1]?.length ?? 0));
