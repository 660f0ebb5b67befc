import type { Fact } from '../../basics/fact.js';
import { labelOf } from '../columns/channels.js';
import type { FileLayout } from '../columns/file-layout.js';
import { keepLateRow } from '../columns/late-labels.js';
import { missingMarks, saysMissing } from '../columns/temperature-words.js';
import { rowFact } from '../readings-facts.js';
import { offsetFault, takeOffset } from '../time/stamp-offset.js';
import { readNumber } from './number-cell.js';
import { drop } from './rows-read.js';
import type { RowsSoFar } from './rows-so-far.js';
import { mended } from './table.js';

/**
 * Takes in a line of a file: its values go into the stores, or it is dropped with the reason.
 *
 * @param cells Of the line, as its delimiter parts them.
 * @param width How many cells the line has; the last may be missing in `cells`.
 */
export function takeLine(soFar: RowsSoFar, cells: readonly string[], line: number, width: number): void {
  const { fixed, tornFrom, firstDataLine } = soFar.layout.table;
  if (line < firstDataLine || (cells.length === 1 && cells[0] === '')) return;
  if (fixed?.unfold) for (const row of fixed.unfold(cells)) takeRow(soFar, row, line, width);
  else takeRow(soFar, tornFrom === null ? cells : mended(cells, tornFrom), line, width);
}

function takeRow(soFar: RowsSoFar, row: readonly string[], line: number, width: number): void {
  const { layout, stamps, stores } = soFar;
  const stamp = layout.time.textOf(row);
  let packed = stamps.read(stamp);
  if (Number.isNaN(packed)) {
    takeOtherLine(soFar, row, line, stamp);
    return;
  }
  let fault = offsetFault(soFar);
  if (fault === null) {
    if (layout.carriesOffset) packed = takeOffset(soFar, packed, line);
    fault = widthFault(layout, line, width);
  }
  if (fault !== null) {
    soFar.rows++;
    drop(soFar.dropped, line, stamp, fault);
    return;
  }
  if (soFar.title !== null) beginBlock(soFar, line);
  if (layout.plan.labelColumns.length > 0) {
    takeLabelled(soFar, row, line, packed);
    return;
  }
  soFar.rows++;
  for (let i = 0; i < stores.length; i++) takeValue(soFar, row, line, packed, i);
}

/** Why a row of another width than the others is dropped. The first row may have more: some loggers add their number to it. */
function widthFault({ table, evenWidth }: FileLayout, line: number, width: number): Fact | null {
  if (evenWidth === null || width === evenWidth || (line === table.firstDataLine && width > evenWidth)) return null;
  return rowFact('row.other-width', { cells: width, usualCells: evenWidth });
}

function beginBlock(soFar: RowsSoFar, line: number): void {
  soFar.blocks.push({ title: soFar.title!.text, fromRow: soFar.stores[0]!.count, line });
  soFar.title = null;
}

/** The label tells the series of a row where several stand one below the other. */
function takeLabelled(soFar: RowsSoFar, row: readonly string[], line: number, packed: number): void {
  const label = labelOf(row, soFar.layout.plan.labelColumns);
  const store = soFar.storeOfLabel.get(label);
  if (store !== undefined) {
    soFar.rows++;
    takeValue(soFar, row, line, packed, store);
  } else if (!soFar.knownLabels.has(label)) keepLateRow(soFar.late, label, row);
}

function takeValue(soFar: RowsSoFar, row: readonly string[], line: number, packed: number, store: number): void {
  const { plan, table } = soFar.layout;
  const cell = row[plan.channels[store]!.column];
  const quality = table.fixed?.quality;
  if (quality && !quality.good.test((row[quality.column] ?? '').trim())) {
    drop(soFar.dropped, line, cell ?? '', rowFact('row.marked-bad'));
    return;
  }
  const value = cell === undefined ? NaN : readNumber(cell);
  if (Number.isNaN(value)) drop(soFar.dropped, line, cell ?? '', whyNoNumber(cell));
  else if (missingMarks.has(value)) drop(soFar.dropped, line, cell!, rowFact('row.missing-mark'));
  else {
    soFar.stores[store]!.push(packed, value, line);
    soFar.lastLine = line;
    soFar.lastCell = cell!;
  }
}

function whyNoNumber(cell: string | undefined): Fact {
  if (cell === undefined) return rowFact('row.too-short');
  if (cell.trim() === '') return rowFact('row.empty');
  return saysMissing(cell) ? rowFact('row.says-missing') : rowFact('row.no-number');
}

/** Takes in a line that is no row of readings: a remark, a header again, a title, or a row whose stamp is spoilt. */
function takeOtherLine(soFar: RowsSoFar, row: readonly string[], line: number, stamp: string): void {
  const { names, units } = soFar.layout.table;
  const filled = row.map((cell) => cell.trim()).filter((cell) => cell !== '');
  const [first] = filled;
  if (first === undefined || first.startsWith('#')) return;
  const isHeaderAgain = names.length > 0 && filled.every((cell) => names.includes(cell) || units.includes(cell));
  if (isHeaderAgain) return;
  if (filled.length === 1 && !/^\W*\d/.test(first)) soFar.title = { text: first, line };
  soFar.rows++;
  drop(soFar.dropped, line, stamp || first, rowFact('row.no-stamp'));
}
