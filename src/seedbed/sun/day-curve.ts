/** The shape of a day: maximum `a` hours after half the daylight, night decay `b`, minimum `c` hours after sunrise. */
export interface DayShape {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/** Soil at the surface and at 10 cm: Parton, Logan (1981), their three coefficients. */
const SURFACE: DayShape = { a: 0.5, b: 1.81, c: 0.49 };
const AT_10_CM: DayShape = { a: 0.45, b: 2.28, c: 1.83 };

/** Air at 1.5 m: the same authors. */
export const AIR_DAY_SHAPE: DayShape = { a: 1.86, b: 2.2, c: -0.17 };

/** The day's shape at a depth in soil: linear between the published depths of 0 and 10 cm, and as at 10 cm below. */
export function soilDayShape(depthCm: number): DayShape {
  const share = Math.min(1, depthCm / 10);
  const between = (key: keyof DayShape): number => SURFACE[key] + share * (AT_10_CM[key] - SURFACE[key]);
  return { a: between('a'), b: between('b'), c: between('c') };
}

/** One day's extremes and its daylight. Hours count from any common start. */
export interface DayExtremes {
  readonly minC: number;
  readonly maxC: number;
  readonly sunriseH: number;
  readonly sunsetH: number;
}

/**
 * The temperature at one time of a day, from its minimum and maximum: a sine by day, a decay by night.
 *
 * The night's curve ends exactly at the next day's minimum; the published one misses it by e^-b of the fall.
 *
 * @param hour   Time [h], from this day's time of minimum to the next day's.
 * @param today  The day of the latest minimum.
 * @param next   The day after.
 * @returns Temperature [°C].
 *
 * Formula: t0 = sunrise + c, Y = sunset - sunrise; by day T = Tmin + (Tmax - Tmin) sin(π (t - t0)/(Y + 2a));
 * by night w = (e^(-b n/Z) - e^-b)/(1 - e^-b), n hours after sunset, Z to the next t0, T = Tmin' + (Tset - Tmin') w.
 * Source: Parton, Logan (1981). A model for diurnal variation in soil and air temperature. Agric. Meteorol. 23:
 * 205-216 (coefficients and form from copies; the night's end is ours).
 * @example dayCurve at 15 h, 18 to 26 °C at 10 cm, daylight 5 to 19 h // => 25.908
 */
export const dayCurve = (hour: number, today: DayExtremes, next: DayExtremes, shape: DayShape): number =>
  dayCurveOf(today, next, shape)(hour);

/** `dayCurve` of one day as a function of the hour, for many times. */
export function dayCurveOf(today: DayExtremes, next: DayExtremes, { a, b, c }: DayShape): (hour: number) => number {
  const { minC, maxC, sunriseH, sunsetH } = today;
  const minimumH = sunriseH + c;
  const daylightH = sunsetH - sunriseH;
  const byDay = (h: number): number =>
    minC + (maxC - minC) * Math.sin((Math.PI * (h - minimumH)) / (daylightH + 2 * a));
  const nightH = next.sunriseH + c - sunsetH;
  const end = Math.exp(-b);
  const fallC = byDay(sunsetH) - next.minC;
  return (hour) =>
    hour <= sunsetH
      ? byDay(hour)
      : next.minC + fallC * ((Math.exp((-b * (hour - sunsetH)) / nightH) - end) / (1 - end));
}
