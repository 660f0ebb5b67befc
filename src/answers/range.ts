import { interpolate } from '../basics/numerics/interpolate.js';
import type { Extrapolation } from './ahead/hours-ahead.js';
import type { HourSpan } from './soil/soil-range.js';

/** The middle of each class of supposed days in which the ratios were measured [d]; the last is open, from 40 on. */
const DAYS = Float64Array.of(2.5, 7.5, 15, 30, 100);

/** Truth over forecast, the middle 80 %, measured on 13 stations of the U.S. Climate Reference Network, four crops,
 * sowings March to September: our own comparison of days summed over supposed and over measured soil. Between the
 * middles of the classes they run straight, so that what comes later never has the earlier range. Repeating the last
 * week was not told apart under ten days; the drift's ratios stand in there. It comes out too late in spring, so the
 * upper end never falls below 1. */
const RATIOS: Record<
  Exclude<Extrapolation, 'refuse' | 'past-years'>,
  { readonly low: Float64Array; readonly high: Float64Array }
> = {
  'seasonal-drift': {
    low: Float64Array.of(0.92, 0.9, 0.76, 0.67, 0.59),
    high: Float64Array.of(1.12, 1.14, 1.27, 1.36, 1.16),
  },
  'repeat-last-week': {
    low: Float64Array.of(0.92, 0.9, 0.63, 0.44, 0.27),
    high: Float64Array.of(1.12, 1.14, 1.09, 1, 1),
  },
};

/** Never said more exactly than this [h]. */
const NARROWEST_H = 24;

/**
 * The middle 80 % of when an event may come, as far as the weather after the last value and the estimate of the soil leave
 * it open. The two are taken to err each for itself: their distances from the forecast add in quadrature.
 *
 * @param eventH  When it is forecast [h since wetting].
 * @param knownH  Up to when the temperature was sent [h since wetting]; those hours add no doubt. May be below 0.
 * @param beyond  What was supposed after it.
 * @param soil    The span that the estimate of the soil leaves open; null: the soil was measured at the seed.
 * @returns Hours since wetting, at least a day apart, with the forecast between them.
 * @example rangeOf(96, 120, 'seasonal-drift') // => { fromH: 84, toH: 108 }
 */
export function rangeOf(
  eventH: number,
  knownH: number,
  beyond: Exclude<Extrapolation, 'past-years'>,
  soil: HourSpan | null = null,
): HourSpan {
  const certainH = Math.max(0, Math.min(eventH, knownH));
  const supposedH = eventH - certainH;
  // A sowing long after the last value rests on more supposed days than its own.
  const aheadH = eventH - Math.min(eventH, knownH);
  const isKnown = beyond === 'refuse' || supposedH === 0;
  const low = isKnown ? 1 : interpolate(aheadH / 24, DAYS, RATIOS[beyond].low);
  const high = isKnown ? 1 : interpolate(aheadH / 24, DAYS, RATIOS[beyond].high);
  const earlierH = Math.hypot(eventH - (certainH + supposedH * low), soil ? eventH - soil.fromH : 0);
  const laterH = Math.hypot(certainH + supposedH * high - eventH, soil ? soil.toH - eventH : 0);
  return aDayWide({ fromH: Math.max(0, eventH - earlierH), toH: eventH + laterH });
}

/** A span of hours since wetting, made a day wide where it is narrower. */
export function aDayWide({ fromH, toH }: HourSpan): HourSpan {
  const widening = Math.max(0, NARROWEST_H - (toH - fromH)) / 2;
  const earliestH = Math.max(0, fromH - widening);
  return { fromH: earliestH, toH: Math.max(toH + widening, earliestH + NARROWEST_H) };
}
