import { YEAR_DAYS } from '../../basics/numerics/harmonic-fit.js';
import { seasonByLatitude } from './season-by-latitude.js';

/**
 * Amplitude of the soil's annual harmonic [K], and the day it peaks, north and south.
 * Fitted to soil at 5 cm under grass, 13 stations of the U.S. Climate Reference Network, 31-48° N; maritime amplitudes
 * are smaller.
 */
const AMPLITUDE_K = 11;
const PEAK_DAY_NORTH = 204;
const PEAK_DAY_SOUTH = 21;
/** Decay time of the last day's anomaly from its month [d]. */
const FADES_IN_DAYS = 8;
/** The level is the mean over at most this many days. */
export const LEVEL_DAYS = 30;

/**
 * Seasonal persistence: daily mean soil temperatures after the last known day. The season moves on, the anomaly decays.
 *
 * @param knownC     Daily means so far [°C], the last one last. Shape (n), n >= 1; the last 30 are used.
 * @param nextDay    Day of the year of the first day wanted; 1 January is 1.
 * @param latitudeDeg Latitude, north positive [°].
 * @param nDays      Number of days wanted.
 * @returns Daily means [°C]. Shape (nDays).
 *
 * Formula: c(t) = A cos(2π (t - P)/365.2425); L = mean(T - c) over the known days; r = T_last - c - L;
 * T(k) = L + c(J + k) + r e^(-(k+1)/8).
 * Validity: days to half emergence err by 1.5 d on average (2.3 d in April, 0.3-0.5 d in June to August), against
 * 5.7 d for holding the last week's mean; measured on 13 stations as above, March to September.
 * Source: our own fit (fixtures/golden/seasonal-drift.json has worked values).
 * @example seasonalPersistence(30 days at 8 °C, 91, 44, 1) // => [8.447]
 */
export function seasonalPersistence(
  knownC: ArrayLike<number>,
  nextDay: number,
  latitudeDeg: number,
  nDays: number,
): Float64Array {
  const { amplitudeK, peakDay } = seasonByLatitude(latitudeDeg, AMPLITUDE_K, PEAK_DAY_NORTH, PEAK_DAY_SOUTH);
  const season = (day: number): number => amplitudeK * Math.cos((2 * Math.PI * (day - peakDay)) / YEAR_DAYS);
  const used = Math.min(knownC.length, LEVEL_DAYS);
  let sum = 0;
  for (let back = 1; back <= used; back++) sum += knownC[knownC.length - back]! - season(nextDay - back);
  const level = sum / used;
  const anomaly = knownC[knownC.length - 1]! - season(nextDay - 1) - level;
  return Float64Array.from(
    { length: nDays },
    (_, k) => level + season(nextDay + k) + anomaly * Math.exp(-(k + 1) / FADES_IN_DAYS),
  );
}

/** A record shorter than a week gives an unsure level for seasonal persistence. */
export const isThinRecord = (knownHours: number): boolean => knownHours < 7 * 24;
