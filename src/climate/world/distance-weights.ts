import type { NearStation } from './nearest-stations.js';

/**
 * Weights of stations by their distance from a place alone.
 *
 * @param near The stations. Shape (n).
 * @returns Weights, 0 to 1, together 1. Shape (n).
 * @throws ScienceError never.
 *
 * Formula: 1/d'², divided by their sum.
 * Source: Shepard (1968). A two-dimensional interpolation function for irregularly-spaced data. Proc. 23rd ACM National
 * Conference: 517-524.
 * @example distanceWeights of stations 10 and 20 km apart from the place // => [0.8, 0.2]
 */
export function distanceWeights(near: readonly Pick<NearStation, 'apartKm'>[]): Float64Array {
  const inverse = Float64Array.from(near, ({ apartKm }) => 1 / (apartKm * apartKm));
  const sum = inverse.reduce((total, one) => total + one, 0);
  return inverse.map((one) => one / sum);
}
