import type { Extrapolation } from './hours-ahead.js';

/** Uncertainty of the first assumed day and of the last ones, and the time in which one becomes the other [K, d]. */
const AT_ONCE_K = 0.3;
const FAR_K = 1.6;
const FAR_IN_SPRING_K = 2;
const FADES_IN_DAYS = 8;
/** A week that comes again knows no season: what the season may have moved by each day more [K]. */
const SEASON_PER_DAY_K = 0.12;
const SEASON_MAX_K = 15;

/**
 * How far a supposed day's mean may be off for not knowing its weather.
 *
 * @param beyond   What was supposed.
 * @param leadDays Days since the last value, 0 on the first.
 * @param isSpring February to May, in the south August to November: then the weather errs more.
 * @returns Standard deviation [K].
 *
 * Formula: sqrt(0.3² + s² (1 - e^(-2 (k + 1)/8))), s 1.6 K, in spring 2 K; repeated weeks 0.12 K a day beside it
 * Source: our own study of 13 stations of the U.S. Climate Reference Network, sowings March to September; the repeated
 * week's share is our judgement.
 * @example aheadSdK('seasonal-drift', 0, false) // => 0.810
 */
export function aheadSdK(beyond: Extrapolation, leadDays: number, isSpring: boolean): number {
  const far = isSpring ? FAR_IN_SPRING_K : FAR_K;
  const drift = Math.hypot(AT_ONCE_K, far * Math.sqrt(1 - Math.exp((-2 * (leadDays + 1)) / FADES_IN_DAYS)));
  return beyond === 'repeat-last-week' ? Math.hypot(drift, Math.min(SEASON_MAX_K, SEASON_PER_DAY_K * leadDays)) : drift;
}
