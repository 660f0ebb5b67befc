import type { FileLayout } from '../columns/file-layout.js';
import type { LateLabels } from '../columns/late-labels.js';
import { type StampReader, stampReader } from '../time/read-stamp.js';
import { type RowStore, rowStore } from './row-store.js';
import type { Block, DroppedList } from './rows-read.js';
import { lastTitle } from './title.js';

/** The rows read of a file so far. One record for a file, changed row by row. */
export interface RowsSoFar {
  readonly layout: FileLayout;
  readonly stamps: StampReader;
  /** One store for each channel of the plan. */
  readonly stores: readonly RowStore[];
  /** The number of the store of each wanted label. */
  readonly storeOfLabel: ReadonlyMap<string | null, number>;
  /** Labels that the head of the file has. */
  readonly knownLabels: ReadonlySet<string | null>;
  readonly late: LateLabels;
  readonly dropped: DroppedList;
  readonly blocks: Block[];
  /** Rows of readings, the dropped ones too. */
  rows: number;
  /** A title whose block has no row yet. */
  title: { readonly text: string; readonly line: number } | null;
  /** Offset that the first stamp carries [minutes]; null where none does. */
  stampOffset: number | null;
  /** The line and the cell of the value that was kept last. */
  lastLine: number;
  lastCell: string;
}

/**
 * The record of a file of which no row is read yet.
 *
 * @param expectedRows More and fewer may come.
 */
export function noRowsYet(layout: FileLayout, expectedRows: number): RowsSoFar {
  const { table, plan, time } = layout;
  return {
    layout,
    stamps: stampReader(time.form),
    stores: plan.channels.map(() => rowStore(expectedRows)),
    storeOfLabel: new Map(plan.channels.map(({ label }, i) => [label, i])),
    knownLabels: new Set(plan.all.map(({ label }) => label)),
    late: new Map(),
    dropped: { first: [], count: 0 },
    blocks: [{ title: lastTitle(table.preamble), fromRow: 0, line: table.firstDataLine }],
    rows: 0,
    title: null,
    stampOffset: null,
    lastLine: 0,
    lastCell: '',
  };
}
