import { type DayExtremes, type DayShape, dayCurve } from './day-curve.js';

/** A day on the clock of hours since a common start: what was noted of it, and its daylight. */
export interface DayOnClock {
  readonly startH: number;
  readonly endH: number;
  readonly sunriseH: number;
  readonly sunsetH: number;
  readonly minC: number | null;
  readonly meanC: number | null;
  readonly maxC: number | null;
}

/** How far the curve may be bent to meet a day's own mean, as a share of the day's range; more would bend it back. */
const MOST_BEND = 0.25;

/**
 * Hourly temperatures from days: rebuilt from minimum and maximum, or level at the mean where only that is known.
 *
 * Where a day gives all three, its curve is bent between the unmoved extremes until its mean is the day's own.
 *
 * @param days In time order; each with a mean, or with minimum and maximum.
 * @param nHours How many hours from the common start.
 * @param shape  The shape of a day at the depth of the thermometer.
 * @returns The temperature at each hour's middle [°C]; NaN for hours of no given day. Shape (nHours).
 *
 * Formula: x = (T - Tmin)/(Tmax - Tmin); x' = x + δ 4x(1 - x), δ = (mean - mean(x)) / mean(4x(1 - x)), kept within ±0.25.
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
    for (let hour = first; hour < end; hour++) {
      const middle = hour + 0.5;
      hourlyC[hour] =
        middle < own.sunriseH + shape.c ? dayCurve(middle, before, own, shape) : dayCurve(middle, own, after, shape);
    }
    if (day.meanC !== null) bendToMean(hourlyC.subarray(first, end), own, day.meanC);
  });
  return hourlyC;
}

function extremesOf({ minC, maxC, sunriseH, sunsetH }: DayOnClock): DayExtremes | null {
  return minC === null || maxC === null ? null : { minC, maxC, sunriseH, sunsetH };
}

/** The day next to this one; where it is not given, this day once more. */
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
  const bow = (tempC: number): number => {
    const x = (tempC - minC) / rangeC;
    return x > 0 && x < 1 ? 4 * x * (1 - x) : 0;
  };
  let sum = 0;
  let bowSum = 0;
  for (const tempC of hourlyC) {
    sum += tempC;
    bowSum += bow(tempC);
  }
  if (bowSum === 0) return;
  const wanted = (meanC - sum / hourlyC.length) / rangeC / (bowSum / hourlyC.length);
  const bend = Math.min(MOST_BEND, Math.max(-MOST_BEND, wanted));
  for (let i = 0; i < hourlyC.length; i++) hourlyC[i]! += bend * rangeC * bow(hourlyC[i]!);
}
