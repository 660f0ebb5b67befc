import type { NearStation } from './nearest-stations.js';
import { MISSING_RAIN, MISSING_SD, MONTHS, type StationTable } from './station-table.js';
import { weightedMonths } from './weighted-months.js';

/** A place's months, January first. Shape (12) each. */
export interface MonthlyTemperatures {
  /** Mean daily maximum and minimum [°C]. */
  readonly meanMaxC: Float64Array;
  readonly meanMinC: Float64Array;
}
export interface MonthlySpread {
  /** Standard deviation of the daily mean about the month's mean, within and between years [K]. */
  readonly sdK: Float64Array;
  /** Precipitation [mm]. */
  readonly rainMm: Float64Array;
}

/** Fall of the mean maximum and minimum with height [K/km]: our study; 0.5 K/km more or less is no better. */
const MAX_LAPSE = 6;
const MIN_LAPSE = 5;

/**
 * Monthly means of a place from stations round it, each brought to the place's height first.
 *
 * @param table   The stations.
 * @param near    Those round the place. Shape (n).
 * @param weights Of each, together 1. Shape (n).
 * @returns Mean daily maxima and minima [°C].
 * @throws ScienceError never.
 *
 * Formula: maxima fall by 6 K/km with height, minima by 5 K/km.
 */
export function temperaturesAtHeight(
  table: StationTable,
  near: readonly NearStation[],
  weights: ArrayLike<number>,
): MonthlyTemperatures {
  const { maxTenths, rangeTenths } = table;
  const cellOf = (station: number, month: number): number => near[station]!.index * MONTHS + month;
  const warmerK = (station: number, lapse: number): number => (lapse * near[station]!.aboveM) / 1000;
  return {
    meanMaxC: weightedMonths((station, month) => {
      return maxTenths[cellOf(station, month)]! / 10 + warmerK(station, MAX_LAPSE);
    }, weights),
    meanMinC: weightedMonths((station, month) => {
      const cell = cellOf(station, month);
      return (maxTenths[cell]! - rangeTenths[cell]!) / 10 + warmerK(station, MIN_LAPSE);
    }, weights),
  };
}

/** The spread of days and the rain of a place, likewise, without the heights. */
export function spreadAndRain(
  table: StationTable,
  near: readonly NearStation[],
  weights: ArrayLike<number>,
): MonthlySpread {
  const cellOf = (station: number, month: number): number => near[station]!.index * MONTHS + month;
  return {
    sdK: weightedMonths((station, month) => {
      const tenths = table.sdTenths[cellOf(station, month)]!;
      return tenths === MISSING_SD ? Number.NaN : tenths / 10;
    }, weights),
    rainMm: weightedMonths((station, month) => {
      const rain = table.rainMm[cellOf(station, month)]!;
      return rain === MISSING_RAIN ? Number.NaN : rain;
    }, weights),
  };
}
