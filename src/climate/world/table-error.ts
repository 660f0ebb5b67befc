import { interpolate } from '../../basics/numerics/interpolate.js';

/** Distances of the nearest station [km], and half the 80 % range of a month's mean there [K], the height known and not. */
const KM = [15, 45, 90, 180, 325, 400];
const KNOWN_HEIGHT_K = [0.75, 0.86, 0.97, 1.09, 1.38, 1.6];
const NO_HEIGHT_K = [1.4, 1.75, 1.85, 1.85, 2.4, 2.5];

/**
 * How far a month's mean from the table of stations may err.
 *
 * @param nearestKm     Distance of the nearest station [km], >= 0.
 * @param isHeightKnown Whether the place's height is known.
 * @returns Half the range that holds 80 % of errors [K].
 * @throws ScienceError never.
 *
 * Source: our study, 2,630 stations between 62° N and S left out in turn.
 * @example tableErrorK(90, true) // => 0.97
 */
export const tableErrorK = (nearestKm: number, isHeightKnown: boolean): number =>
  interpolate(nearestKm, KM, isHeightKnown ? KNOWN_HEIGHT_K : NO_HEIGHT_K);
