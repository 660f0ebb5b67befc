import { distanceWeights } from './distance-weights.js';
import { krigingWeights } from './kriging-weights.js';
import {
  type MonthlySpread,
  type MonthlyTemperatures,
  spreadAndRain,
  temperaturesAtHeight,
} from './months-at-height.js';
import { type NearStation, nearestStations, type Spot } from './nearest-stations.js';
import type { StationTable } from './station-table.js';

/** A place's climate from the stations round it. */
export interface PlaceClimate extends MonthlyTemperatures, MonthlySpread {
  /** The stations that weigh most in its temperatures, the heaviest first. */
  readonly stations: readonly (NearStation & { readonly share: number })[];
  /** Distance of the nearest station [km]. */
  readonly nearestKm: number;
  /** The station that is nearest when heights count as distance. */
  readonly likest: NearStation;
}

/** More stations than this gain less than 0.02 K. */
const STATIONS = 30;
/** Spread and rain vary less smoothly; five stations serve them as well as more. */
const SPREAD_STATIONS = 5;
const NAMED_STATIONS = 5;

/**
 * The climate of any place, from the table of stations.
 *
 * @param table  The stations.
 * @param spot   The place.
 * @param except Index of a station to leave out, to judge the others by it; -1: none.
 * @returns Its months, and the stations that they rest on; a share is of the weights above 0.
 * @throws ScienceError never.
 *
 * Formula: temperatures by `krigingWeights` of 30 stations, spread and rain by `distanceWeights` of five.
 */
export function placeClimate(table: StationTable, spot: Spot, except = -1): PlaceClimate {
  const near = nearestStations(table, spot, STATIONS, except);
  const weights = krigingWeights(table, spot, near);
  const few = near.slice(0, SPREAD_STATIONS);
  const positive = weights.reduce((sum, weight) => sum + Math.max(0, weight), 0);
  return {
    ...temperaturesAtHeight(table, near, weights),
    ...spreadAndRain(table, few, distanceWeights(few)),
    stations: near
      .map((one, i) => ({ ...one, share: weights[i]! / positive }))
      .sort((a, b) => b.share - a.share)
      .slice(0, NAMED_STATIONS),
    nearestKm: near.reduce((least, { km }) => Math.min(least, km), Number.POSITIVE_INFINITY),
    likest: near[0]!,
  };
}
