import { type DayExtremes, type DayShape, dayCurveOf } from './day-curve.js';

/** A day on the clock of hours since a common start, its temperatures and its daylight. */
export interface DayOnClock {
  readonly startH: number;
  readonly endH: number;
  readonly sunriseH: number;
  readonly sunsetH: number;
  readonly minC: number | null;
  /** Null or missing: not known. */
  readonly meanC?: number | null;
  readonly maxC: number | null;
}

/** Bounds of the exponent that fits a curve to the day's mean; beyond them it would be all night or all noon. */
const MIN_EXPONENT = 0.2;
const MAX_EXPONENT = 5;
const NEWTON_STEPS = 12;

/**
 * Hourly temperatures from days: rebuilt from minimum and maximum, or constant at the mean when only that is known.
 *
 * A day with all three keeps its extremes; its curve between them is bent until its mean is the day's own.
 *
 * @param days   In time order; each with a mean, or with minimum and maximum.
 * @param nHours Number of hours from the common start.
 * @param shape  The shape of a day at the depth of the thermometer.
 * @returns The temperature at each hour's middle [°C]; NaN for hours outside the given days. Shape (nHours).
 *
 * Formula: x = (T - Tmin)/(Tmax - Tmin); x' = x^p, p such that the mean of x' is the day's, by Newton's method on ln p,
 * kept within 0.2 to 5.
 * Source: the curve as in day-curve; the bend is ours.
 */
export function hourlyFromDays(days: readonly DayOnClock[], nHours: number, shape: DayShape): Float64Array {
  const hourlyC = new Float64Array(nHours).fill(NaN);
  days.forEach((day, i) => {
    const first = Math.max(0, Math.ceil(day.startH - 0.5));
    const end = Math.min(nHours, Math.ceil(day.endH - 0.5));
    if (first >= end) return;
    const own = extremesOf(day);
    if (!own) {
      hourlyC.fill(day.meanC!, first, end);
      return;
    }
    const before = neighbour(days[i - 1], day, own, -1);
    const after = neighbour(days[i + 1], day, own, 1);
    const [early, late] = [dayCurveOf(before, own, shape), dayCurveOf(own, after, shape)];
    for (let hour = first; hour < end; hour++) {
      const middle = hour + 0.5;
      const tempC = middle < own.sunriseH + shape.c ? early(middle) : late(middle);
      // Next to a much warmer or colder day the night's decay would leave this day's own range.
      hourlyC[hour] = Math.min(own.maxC, Math.max(own.minC, tempC));
    }
    if (typeof day.meanC === 'number') bendToMean(hourlyC.subarray(first, end), own, day.meanC);
  });
  return hourlyC;
}

function extremesOf({ minC, maxC, sunriseH, sunsetH }: DayOnClock): DayExtremes | null {
  return minC === null || maxC === null ? null : { minC, maxC, sunriseH, sunsetH };
}

/** The adjoining day's extremes; this day's again when it is not given. */
function neighbour(other: DayOnClock | undefined, day: DayOnClock, own: DayExtremes, side: 1 | -1): DayExtremes {
  const adjoins = other && (side === 1 ? other.startH === day.endH : other.endH === day.startH);
  const extremes = adjoins ? extremesOf(other) : null;
  if (extremes) return extremes;
  const shiftH = side * 24;
  return { ...own, sunriseH: own.sunriseH + shiftH, sunsetH: own.sunsetH + shiftH };
}

function bendToMean(hourlyC: Float64Array, { minC, maxC }: DayExtremes, meanC: number): void {
  const rangeC = maxC - minC;
  if (rangeC === 0) return;
  const wanted = (meanC - minC) / rangeC;
  const shares = hourlyC.map((tempC) => (tempC - minC) / rangeC);
  const bends = (share: number): boolean => share > 0 && share < 1;
  let exponent = 1;
  for (let step = 0; step < NEWTON_STEPS; step++) {
    let sum = 0;
    let slope = 0;
    for (const share of shares) {
      const bent = bends(share) ? share ** exponent : share;
      sum += bent;
      if (bends(share)) slope += bent * Math.log(share) * exponent;
    }
    const excess = sum - wanted * shares.length;
    if (slope === 0 || Math.abs(excess) < 1e-10) break;
    exponent = Math.min(MAX_EXPONENT, Math.max(MIN_EXPONENT, exponent * Math.exp(-excess / slope)));
  }
  shares.forEach((share, i) => {
    if (bends(share)) hourlyC[i] = minC + rangeC * share ** exponent;
  });
}
