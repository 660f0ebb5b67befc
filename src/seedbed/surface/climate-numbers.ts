import { harmonicFit, YEAR_DAYS } from '../../basics/numerics/harmonic-fit.js';
import { coversYear } from '../probe/covers-year.js';
import { extraterrestrialMJ } from '../sun/sun.js';
import { referenceEvaporationMm, saturationKPa } from './reference-evaporation.js';

/**
 * A place's climate, as far as it decides how its sunshine warms its soil. Each number is an anomaly from the average
 * station.
 */
export interface ClimateNumbers {
  /** A: amplitude of the air's annual harmonic, continental above 0, maritime below. */
  readonly continentality: number;
  /** V: daily rise of the air's saturation vapour pressure [kPa]. */
  readonly vapourKPa: number;
  /** D: season of the wider diurnal range, summer above 0, winter below. */
  readonly rangeSeason: number;
  /**
   * LA: logarithm of the aridity index, higher in humid places; dry ground heats more. null: the annual rain is not
   * known.
   */
  readonly logAridity: number | null;
}

/** Daily extremes of the air and the day of the year, in time order. All of shape (n). */
export interface YearsOfAir {
  readonly dayOfYear: ArrayLike<number>;
  readonly minC: ArrayLike<number>;
  readonly maxC: ArrayLike<number>;
}

/**
 * A place's climate numbers, from a year or more of its daily minima and maxima.
 *
 * @param years        The record [°C]; NaN for a missing day. Shape (n).
 * @param latitudeDeg  Latitude, north positive [°].
 * @param annualRainMm Mean annual precipitation [mm]; null: not known.
 * @returns The numbers; or null when the days do not cover a whole year (`coversYear`).
 * @throws ScienceError never.
 *
 * Formula: A = (amplitude of the first harmonic of Tm, kept within 3.5 to 17 K, - 11)/10;
 * V = mean of es(Tmax) - es(Tmin), kept within 0.4 to 2.8 kPa, - 1.2; D = (-cosine of the first harmonic of d -
 * 1.5)/10, the phase from 1 January, in the south from 1 July; LA as `logAridityOf`.
 * Validity: 26 to 49° N, mostly grass; outside the bounds nothing is known.
 * Source: our own study of 99 stations of the U.S. Climate Reference Network.
 */
export function climateNumbers(
  { dayOfYear, minC, maxC }: YearsOfAir,
  latitudeDeg: number,
  annualRainMm: number | null,
): ClimateNumbers | null {
  const n = dayOfYear.length;
  if (!coversYear(dayOfYear, maxC)) return null;
  const means = new Float64Array(n);
  const ranges = new Float64Array(n);
  const phase = new Float64Array(n);
  let whole = 0;
  let vapour = 0;
  let evaporationMm = 0;
  for (let i = 0; i < n; i++) {
    const [low, high, day] = [minC[i]!, maxC[i]!, dayOfYear[i]!];
    means[i] = (low + high) / 2;
    ranges[i] = Math.max(0.5, high - low);
    phase[i] = day - 1 - (latitudeDeg < 0 ? YEAR_DAYS / 2 : 0);
    if (Number.isNaN(means[i])) {
      ranges[i] = NaN;
      continue;
    }
    whole++;
    vapour += saturationKPa(high) - saturationKPa(low);
    evaporationMm += referenceEvaporationMm(low, high, extraterrestrialMJ(latitudeDeg, day));
  }
  const course = harmonicFit(phase, means, 1);
  const rangeCourse = harmonicFit(phase, ranges, 1);
  return {
    continentality: continentalityOf(Math.hypot(course.cosine[0]!, course.sine[0]!)),
    vapourKPa: clip(vapour / whole, 0.4, 2.8) - 1.2,
    rangeSeason: (-rangeCourse.cosine[0]! - 1.5) / 10,
    logAridity: annualRainMm === null ? null : logAridityOf(annualRainMm / ((evaporationMm / whole) * YEAR_DAYS)),
  };
}

/** A from the amplitude of the air's annual harmonic [K]. @example continentalityOf(9) // => -0.2 */
export const continentalityOf = (amplitudeK: number): number => (clip(amplitudeK, 3.5, 17) - 11) / 10;

/**
 * LA: logarithm of the aridity index, shifted.
 *
 * @param aridityIndex Annual precipitation over annual reference evaporation, kept within 0 to 2.
 *
 * Formula: LA = ln(AI + 0.1) + 0.6
 * @example logAridityOf(0.7) // => 0.3769
 */
export const logAridityOf = (aridityIndex: number): number => Math.log(clip(aridityIndex, 0, 2) + 0.1) + 0.6;

const clip = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));
