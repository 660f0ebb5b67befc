import { HOUR_MS } from '../../basics/calendar.js';
import { interpolate } from '../../basics/numerics/interpolate.js';
import type { Medium } from '../../basics/series.js';

/** Limits of a working thermometer's readings, and of their change. */
export interface DoubtLimits {
  /** Colder and hotter than this is no reading [°C]. */
  readonly coldestC: number;
  readonly hottestC: number;
  /** More than this within an hour is doubtful [K]. */
  readonly stepK: number;
  /** Standing out from both neighbours by more than this is doubtful [K]. */
  readonly spikeK: number;
  /** Standing out from both neighbours by more than this is no reading [K]. */
  readonly grossSpikeK: number;
}

/** Between readings further apart than this the day's own course is steeper than any fault: nothing is told [ms]. */
export const TELLING_MS = 3 * HOUR_MS;

/** A probe at the seed, and one on the ground, is judged as one this deep [cm]. Chosen here. */
const SEED_DEPTH_CM = 1;

/** Most change in an hour by depth [cm, K]. Judged defaults: no published limit is scaled to depth. */
const STEP_DEPTHS_CM = [1, 5, 10, 20];
const STEP_LOG_K = [10, 5, 3, 1.5].map(Math.log);

/** Most change of the air in an hour [K]: the published 10 °C/h of network quality control. */
const AIR_STEP_K = 10;

/** A spike's share of the hourly step: gives the 3 K that are the default at 5 cm. */
const SPIKE_SHARE = 0.6;

/** A spike this many times its limit is no weather. Chosen here. */
const GROSS = 3;

/**
 * The limits for a medium and a depth.
 *
 * Ranges: soil -30 to 60 °C, from 2 cm upwards -35 to 75 °C (judged; published: -30 to 50 at 10 cm in the Oklahoma
 * Mesonet, -50 to 50 in soil and -80 to 80 on the ground in the WMO's guideline for automatic stations, Zahumensky
 * 2004); air -80 to 60 °C (the same guideline). Step: 10, 5, 3, 1.5 K in an hour at 1, 5, 10, 20 cm, between them as
 * exp(-z/D) with the D of either side, level above and below; air 10 K. Spike: 0.6 of the step. One count of a
 * coarse thermometer is allowed on top of both.
 *
 * @param medium       Soil or air.
 * @param probeDepthCm Depth of the probe [cm], >= 0; null: at the seed, some 1 to 2 cm down. Air has none.
 * @param resolutionC  One count of a coarse thermometer [K]; 0 for a fine one.
 * @example limitsAt('soil', 5, 0).spikeK // => 3
 */
export function limitsAt(medium: Medium, probeDepthCm: number | null, resolutionC: number): DoubtLimits {
  const depthCm = probeDepthCm ?? SEED_DEPTH_CM;
  const air = medium === 'air';
  const stepK = air ? AIR_STEP_K : Math.exp(interpolate(depthCm, STEP_DEPTHS_CM, STEP_LOG_K));
  const spikeK = SPIKE_SHARE * stepK;
  const [coldestC, hottestC] = air ? [-80, 60] : depthCm <= 2 ? [-35, 75] : [-30, 60];
  return {
    coldestC,
    hottestC,
    stepK: stepK + resolutionC,
    spikeK: spikeK + resolutionC,
    grossSpikeK: GROSS * spikeK + resolutionC,
  };
}
