import type { Medium } from '../../basics/series.js';
import type { TemperatureUnit } from '../../basics/units.js';
import type { Meaning } from './columns.js';

/** Numbers that may be the temperatures asked for: a column, or the rows of one label in it. */
export interface Channel {
  /** From 0. */
  readonly column: number;
  /** Label of its rows; null: every row counts. */
  readonly label: string | null;
  readonly name: string;
  readonly meaning: Meaning;
  readonly isFlat: boolean;
  /** Whole numbers, each one more than the last. */
  readonly isCounter: boolean;
  readonly min: number;
  readonly max: number;
}

/** Channels of the temperatures. Days may have a minimum and a maximum beside a mean, each in a channel of its own. */
export interface ChannelPlan {
  readonly channels: readonly Channel[];
  /** Columns, from 0, whose cells together label a row; none in a file with one series to a column. */
  readonly labelColumns: readonly number[];
  readonly all: readonly Channel[];
}

/** The caller's hints about the wanted series. */
export interface WantedChannel {
  readonly medium: Medium | null;
  readonly probeDepthCm: number | null;
  readonly column: string | null;
  readonly unit: TemperatureUnit | null;
}
