import { greatCircleKm } from './great-circle-km.js';
import type { StationTable } from './station-table.js';

/** A place whose climate is asked for. */
export interface Spot {
  /** North positive [°]. */
  readonly latitude: number;
  /** East positive [°]. */
  readonly longitude: number;
  /** Above the sea [m]; null: not known. */
  readonly elevationM: number | null;
}

/** A station near a place. */
export interface NearStation {
  /** Index into the table. */
  readonly index: number;
  /** Along the surface [km]. */
  readonly km: number;
  /** Its height less the place's [m]; 0 where the place's is not known. */
  readonly aboveM: number;
  /** Distance with the heights in it [km]. */
  readonly apartKm: number;
}

/** A height difference of 1 m separates two climates as this distance does [km]: 0.2 to 0.6 are no better by 0.05 K. */
const KM_PER_M = 0.3;
/** Stations nearer than this are alike [km]: no station stands where the garden is. */
const LEAST_KM = 5;

/**
 * The stations whose climate is most like a place's.
 *
 * @param table  The stations.
 * @param spot   The place.
 * @param count  How many.
 * @param except Index of a station to leave out, to judge the others by it; -1: none.
 * @returns The stations, the most alike first.
 * @throws ScienceError never.
 *
 * Formula: d' = sqrt(d² + (0.3 Δz)² + 5²) [km], d along the surface, Δz in metres.
 * Source: our study, each station left out in turn.
 */
export function nearestStations(table: StationTable, spot: Spot, count: number, except = -1): NearStation[] {
  const { latitudeHundredths, longitudeHundredths, elevationM } = table;
  const all: NearStation[] = [];
  for (let index = 0; index < table.count; index++) {
    if (index === except) continue;
    const latitude = latitudeHundredths[index]! / 100;
    const longitude = longitudeHundredths[index]! / 100;
    const km = greatCircleKm(spot.latitude, spot.longitude, latitude, longitude);
    const aboveM = spot.elevationM === null ? 0 : elevationM[index]! - spot.elevationM;
    all.push({ index, km, aboveM, apartKm: Math.hypot(km, LEAST_KM, climateKm(0, aboveM)) });
  }
  return all.sort((a, b) => a.apartKm - b.apartKm).slice(0, count);
}

/**
 * Distance between two climates, with the difference of their heights in it [km].
 *
 * @param km     Along the surface [km].
 * @param aboveM Difference of the heights [m].
 */
export const climateKm = (km: number, aboveM: number): number => Math.hypot(km, KM_PER_M * aboveM);
