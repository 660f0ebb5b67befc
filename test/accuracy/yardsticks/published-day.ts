import type { DayExtremes, DayShape } from '../../../src/seedbed/sun/day-curve.js';

/**
 * The published curve of a day, whose night ends a little above the next minimum; ours (`dayCurve`) is bent to meet it.
 *
 * @param hour When [h], from the day's minimum to the next day's.
 * @param day  Extremes and daylight; the next day is the same.
 * @param shape Its three coefficients.
 * @returns Temperature [°C].
 *
 * Formula: by day as `dayCurve`; by night T = Tmin + (Tset - Tmin) exp(-b n/Z), n hours after sunset, Z = 24 - Y
 * Source: Parton, Logan (1981), as `dayCurve`; the form from memory.
 */
export function publishedDay(
  hour: number,
  { minC, maxC, sunriseH, sunsetH }: DayExtremes,
  { a, b, c }: DayShape,
): number {
  const daylightH = sunsetH - sunriseH;
  const byDay = (h: number): number =>
    minC + (maxC - minC) * Math.sin((Math.PI * (h - sunriseH - c)) / (daylightH + 2 * a));
  if (hour <= sunsetH) return byDay(hour);
  return minC + (byDay(sunsetH) - minC) * Math.exp((-b * (hour - sunsetH)) / (24 - daylightH));
}
