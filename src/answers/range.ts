import type { Beyond } from './hours-ahead.js';

/** Truth over forecast, the middle 80 %, for a stretch of days that was supposed. */
interface Ratios {
  /** Up to this many supposed days. */
  readonly upToDays: number;
  readonly low: number;
  readonly high: number;
}

/** Measured on 13 stations of the U.S. Climate Reference Network, four crops, sowings March to September: our own
 * comparison of days summed over supposed and over measured soil. Repeating the last week was not told apart under
 * ten days; the drift's ratios stand in there. It comes out too late in spring, so the upper end never falls below 1. */
const RATIOS: Record<Exclude<Beyond, 'refuse'>, readonly Ratios[]> = {
  'seasonal-drift': [
    { upToDays: 5, low: 0.92, high: 1.12 },
    { upToDays: 10, low: 0.9, high: 1.14 },
    { upToDays: 20, low: 0.76, high: 1.27 },
    { upToDays: 40, low: 0.67, high: 1.36 },
    { upToDays: Infinity, low: 0.59, high: 1.16 },
  ],
  'repeat-last-week': [
    { upToDays: 5, low: 0.92, high: 1.12 },
    { upToDays: 10, low: 0.9, high: 1.14 },
    { upToDays: 20, low: 0.63, high: 1.09 },
    { upToDays: 40, low: 0.44, high: 1 },
    { upToDays: Infinity, low: 0.27, high: 1 },
  ],
};

/** Never said more exactly than this [h]. */
const NARROWEST_H = 24;

/**
 * The middle 80 % of when an event may come, as far as the weather after the last value leaves it open.
 *
 * @param eventH  When it is forecast [h since wetting].
 * @param knownH  Up to when the temperature was sent [h since wetting]; those hours add no doubt. May be below 0.
 * @param beyond  What was supposed after it.
 * @returns Hours since wetting, at least a day apart, with the forecast between them.
 * @example rangeOf(96, 120, 'seasonal-drift') // => { fromH: 84, toH: 108 }
 */
export function rangeOf(eventH: number, knownH: number, beyond: Beyond): { fromH: number; toH: number } {
  const certainH = Math.max(0, Math.min(eventH, knownH));
  const supposedH = eventH - certainH;
  const { low, high } =
    beyond === 'refuse' || supposedH === 0
      ? { low: 1, high: 1 }
      : RATIOS[beyond].find(({ upToDays }) => supposedH <= 24 * upToDays)!;
  const fromH = certainH + supposedH * low;
  const toH = certainH + supposedH * high;
  const widening = Math.max(0, NARROWEST_H - (toH - fromH)) / 2;
  const earliestH = Math.max(0, fromH - widening);
  return { fromH: earliestH, toH: Math.max(toH + widening, earliestH + NARROWEST_H) };
}
