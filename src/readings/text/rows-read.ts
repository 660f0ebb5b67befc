import { RequestError } from '../../basics/errors.js';
import type { Fact } from '../../basics/fact.js';
import type { Medium } from '../../basics/series.js';
import type { TemperatureUnit } from '../../basics/units.js';
import type { ChannelPlan } from '../columns/channel.js';
import type { Column } from '../columns/columns.js';
import type { ReadSeries } from '../read-series.js';
import { readingsRefusal } from '../readings-facts.js';
import { type DroppedValue, type FileReport, MAX_DROPPED } from '../report.js';
import type { DateOrder } from '../time/date-order.js';
import type { TimePlan } from '../time/time-plan.js';
import type { RowStore } from './row-store.js';
import type { Table } from './table.js';

/** The caller's hints about a file; null for each not given. */
export interface FileHints {
  readonly medium: Medium | null;
  readonly probeDepthCm: number | null;
  readonly unit: TemperatureUnit | null;
  /** A column's number, the first being 1, its name, or the name of a sensor in a file of many. */
  readonly column: string | null;
  readonly timeColumn: string | null;
  readonly dateOrder: DateOrder | null;
  readonly clock: 'local' | 'standard' | 'utc' | null;
  readonly decimalMark: '.' | ',' | null;
}

/** No hints. */
export const noHints: FileHints = {
  medium: null,
  probeDepthCm: null,
  unit: null,
  column: null,
  timeColumn: null,
  dateOrder: null,
  clock: null,
  decimalMark: null,
};

export interface FileRead {
  readonly series: ReadSeries;
  readonly rows: number;
  readonly file: FileReport;
}

/** All that has been read of a file, before its stamps and units are settled. */
export interface RowsRead {
  readonly table: Table;
  readonly columns: readonly Column[];
  readonly time: TimePlan;
  readonly plan: ChannelPlan;
  /** One store for each channel of the plan. */
  readonly stores: readonly RowStore[];
  readonly rows: number;
  readonly dropped: DroppedList;
  /** Offset that the stamps carry [minutes]; null where none does. */
  readonly stampOffset: number | null;
  /** The stores hold instants already, not packed stamps. */
  readonly areInstants: boolean;
  readonly encoding: FileReport['encoding'];
  readonly blocks: readonly Block[];
  readonly wantedBlock: string | null;
}

/** Rows under a title of their own, from this row of the store on. */
export interface Block {
  readonly title: string;
  readonly fromRow: number;
  readonly line: number;
}

/** Values left out: the first of them, and how many there are. */
export interface DroppedList {
  readonly first: DroppedValue[];
  count: number;
}

export function drop(list: DroppedList, line: number, value: string, why: Fact, valueC?: number): void {
  list.count++;
  if (list.first.length < MAX_DROPPED) {
    list.first.push({ line, value: value.slice(0, 60), why, ...(valueC === undefined ? {} : { valueC }) });
  }
}

/** Why a file that has rows gives no readings. */
export function nothingRead({ dropped, table }: RowsRead): RequestError {
  const [first] = dropped.first;
  const said = readingsRefusal('no-readings.no-usable-row', { line: first?.line ?? null, value: first?.value ?? '' });
  const detail = first?.why ?? readingsRefusal('no-readings.no-rows.field');
  return new RequestError('no-readings', said, [{ line: first?.line ?? table.firstDataLine, detail }]);
}
