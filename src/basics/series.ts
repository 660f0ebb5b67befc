import type { PlainDate } from './calendar.js';
import type { TemperatureUnit } from './units.js';

export type Medium = 'soil' | 'air';

/** What a temperature rests on, surest first. The order is that of the codes in hourly arrays. */
export const bases = [
  'measured',
  'corrected',
  'modelled',
  'filled',
  'forecast',
  'past-years',
  'drift',
  'repeated',
] as const;
export type Basis = (typeof bases)[number];
export const basisCode = (basis: Basis): number => bases.indexOf(basis);

/** One day's temperatures: its mean, or its minimum and maximum, or all three. */
export interface DailyRow {
  readonly date: PlainDate;
  readonly min?: number | undefined;
  readonly mean?: number | undefined;
  readonly max?: number | undefined;
  readonly basis?: Basis | undefined;
  readonly plusMinus?: number | undefined;
  /** false: too little of the day was measured; it is left out. */
  readonly complete?: boolean | undefined;
}

/** One instantaneous reading; `at` is an ISO stamp. */
export interface ReadingRow {
  readonly at: string;
  readonly value: number;
  readonly basis?: Basis | undefined;
}

/** The one shape of a temperature series, in and out. A soil series without `probeDepthCm` was measured at the seed. */
export interface TemperatureSeries {
  readonly medium: Medium;
  readonly probeDepthCm?: number | undefined;
  readonly unit: TemperatureUnit;
  readonly origin?: 'measured' | 'forecast' | undefined;
  readonly daily?: readonly DailyRow[] | undefined;
  readonly readings?: readonly ReadingRow[] | undefined;
}
