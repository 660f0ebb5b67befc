import { choleskyFactor, solveLower, solveUpper } from '../../basics/numerics/cholesky.js';
import { greatCircleKm } from './great-circle-km.js';
import { climateKm, type NearStation, type Spot } from './nearest-stations.js';
import type { StationTable } from './station-table.js';

/** Variance of monthly means about their gradients, between places far apart [K²]; 10 to 30 are no better by 0.01 K. */
const VARIANCE_K2 = 20;
/** Its e-folding distance [km]: so long that variance grows nearly evenly with the distance between stations. */
const FADING_KM = 5000;
/** Variance of a station about the country round it: its site, its instrument, its years [K²]. */
const SITE_VARIANCE_K2 = 0.2;
/** Standard deviations of the gradients: northward and eastward [K/°], and of the lapse rate about the usual one [K/km]. */
const GRADIENT_SD = 0.4;
const LAPSE_SD = 1;

/**
 * Weights of stations that make the likeliest monthly mean of a place: stations side by side share a weight, and a gradient
 * across them goes on to the place.
 *
 * @param table The stations.
 * @param spot  The place.
 * @param near  The stations round it, of which the means are brought to the place's height. Shape (n), n >= 1.
 * @returns Weights, together 1; some are below 0. Shape (n).
 * @throws ScienceError never.
 *
 * Formula: ordinary kriging, w = C⁻¹ (c + λ), λ such that the sum is 1; C, c: 20 e^(-d/5000) + 0.4² (north north' + east
 * east') + 1² up up' [K²], d with heights in it, and 0.2 for a station with itself.
 * Accuracy: 2,803 stations, every second one between 62° N and S left out in turn: maxima, minima, means of months err by 1.29, 1.41,
 * 1.02 K (root mean square); weights by distance alone by 1.61, 1.60, 1.28 K.
 * Source: Cressie (1993). Statistics for Spatial Data, ch. 3; the constants our study.
 */
export function krigingWeights(table: StationTable, spot: Spot, near: readonly NearStation[]): Float64Array {
  const n = near.length;
  const points = near.map(({ index, aboveM }) => pointOf(table, spot, index, aboveM));
  const matrix = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      const [one, other] = [points[i]!, points[j]!];
      const km = greatCircleKm(one.latitude, one.longitude, other.latitude, other.longitude);
      matrix[i * n + j] =
        fading(climateKm(km, one.aboveM - other.aboveM)) +
        GRADIENT_SD * GRADIENT_SD * (one.north * other.north + one.east * other.east) +
        LAPSE_SD * LAPSE_SD * one.upKm * other.upKm +
        (i === j ? SITE_VARIANCE_K2 : 0);
    }
  }
  const lower = choleskyFactor(matrix, n);
  const solve = (right: Float64Array): Float64Array => solveUpper(lower, solveLower(lower, right));
  // At the place itself the gradients are nought.
  const ofPlace = solve(Float64Array.from(near, ({ km, aboveM }) => fading(climateKm(km, aboveM))));
  const ofMean = solve(new Float64Array(n).fill(1));
  const lambda = (1 - sum(ofPlace)) / sum(ofMean);
  return ofPlace.map((weight, i) => weight + lambda * ofMean[i]!);
}

function pointOf(table: StationTable, spot: Spot, index: number, aboveM: number) {
  const latitude = table.latitudeHundredths[index]! / 100;
  const longitude = table.longitudeHundredths[index]! / 100;
  const turned = ((longitude - spot.longitude + 540) % 360) - 180;
  return {
    latitude,
    longitude,
    aboveM,
    north: latitude - spot.latitude,
    east: turned * Math.cos((spot.latitude * Math.PI) / 180),
    upKm: aboveM / 1000,
  };
}

const fading = (km: number): number => VARIANCE_K2 * Math.exp(-km / FADING_KM);
const sum = (values: Float64Array): number => values.reduce((total, value) => total + value, 0);
