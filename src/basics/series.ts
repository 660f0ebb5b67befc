import type { PlainDate } from './calendar.js';
import type { TemperatureUnit } from './units.js';

export type Medium = 'soil' | 'air';

/** Provenance of a temperature, surest first. The order is that of the codes in hourly arrays. */
export const bases = [
  'measured',
  'corrected',
  'modelled',
  'filled',
  'forecast',
  'past-years',
  'drift',
  'repeated',
  'climate-table',
] as const;
export type Basis = (typeof bases)[number];
export const basisCode = (basis: Basis): number => bases.indexOf(basis);

/** One day's temperatures: mean, or minimum and maximum, or all three. */
export interface DailyRow {
  readonly date: PlainDate;
  readonly min?: number | undefined;
  readonly mean?: number | undefined;
  readonly max?: number | undefined;
  readonly basis?: Basis | undefined;
  readonly plusMinus?: number | undefined;
  /** False when too little of the day was measured; such a day is left out. */
  readonly complete?: boolean | undefined;
}

/** One instantaneous reading; `at` is an ISO stamp. */
export interface ReadingRow {
  readonly at: string;
  readonly value: number;
  readonly basis?: Basis | undefined;
}

/**
 * The one shape of a temperature series, in requests and answers. Without `probeDepthCm`, soil was measured at the
 * seed.
 */
export interface TemperatureSeries {
  readonly medium: Medium;
  readonly probeDepthCm?: number | undefined;
  readonly unit: TemperatureUnit;
  readonly origin?: 'measured' | 'forecast' | undefined;
  readonly daily?: readonly DailyRow[] | undefined;
  readonly readings?: readonly ReadingRow[] | undefined;
}
