import { harmonicFit, YEAR_DAYS } from '../../basics/numerics/harmonic-fit.js';
import { coversYear } from '../probe/covers-year.js';
import { diffusivityOf, type Ground } from '../surface/ground.js';
import { seasonByLatitude } from '../surface/season-by-latitude.js';
import { dampingDepthCm } from './damping.js';

/** Annual harmonic of the sol-air temperature: mean and first harmonic, by days since 1 January [°C, K]. */
export interface AnnualHarmonic {
  readonly meanC: number;
  readonly cosineK: number;
  readonly sineK: number;
}

/**
 * Amplitude and peak of the harmonic assumed when less than a year is known: our own estimate from soil at 5 cm under
 * grass at 13 stations of the U.S. Climate Reference Network (11 K, 23 July), a tenth wider and a week earlier at the
 * surface.
 */
const AMPLITUDE_K = 12;
const PEAK_DAY_NORTH = 197;
const PEAK_DAY_SOUTH = 14;
/** Assumed share of the harmonic's cold below freezing that reaches the soil. */
const FROZEN_SHARE = 0.25;
const YEAR_H = YEAR_DAYS * 24;

/**
 * The annual harmonic of daily values: fitted when they cover a whole year (`coversYear`), else assumed from the
 * latitude and shifted to their level.
 *
 * @param daysOfYear  Day of the year of each value. Shape (n), n >= 1.
 * @param valuesC     Daily means [°C]; NaN is left out. Shape (n).
 * @param latitudeDeg Latitude, north positive [°].
 * @returns The harmonic.
 * @throws ScienceError `empty` without any value.
 *
 * Validity: the assumed one 31 to 48° N; maritime amplitudes are smaller, the tropics are scaled down in proportion
 * (our assumption).
 */
export function annualHarmonic(
  daysOfYear: ArrayLike<number>,
  valuesC: ArrayLike<number>,
  latitudeDeg: number,
): AnnualHarmonic {
  const since = Float64Array.from(daysOfYear, (day) => day - 1);
  if (coversYear(daysOfYear, valuesC)) {
    const { mean, cosine, sine } = harmonicFit(since, valuesC, 1);
    return { meanC: mean, cosineK: cosine[0]!, sineK: sine[0]! };
  }
  const { amplitudeK, peakDay } = seasonByLatitude(latitudeDeg, AMPLITUDE_K, PEAK_DAY_NORTH, PEAK_DAY_SOUTH);
  const peak = (2 * Math.PI * (peakDay - 1)) / YEAR_DAYS;
  const wave = { meanC: 0, cosineK: amplitudeK * Math.cos(peak), sineK: amplitudeK * Math.sin(peak) };
  const rest = Float64Array.from(valuesC, (value, i) => value - annualHarmonicAt(wave, since[i]!));
  return { ...wave, meanC: harmonicFit(since, rest, 0).mean };
}

/** The harmonic on a day [°C]; days since 1 January. */
export const annualHarmonicAt = ({ meanC, cosineK, sineK }: AnnualHarmonic, day: number): number => {
  const angle = (2 * Math.PI * day) / YEAR_DAYS;
  return meanC + cosineK * Math.cos(angle) + sineK * Math.sin(angle);
};

/**
 * The soil's profile on a day under the annual harmonic alone.
 *
 * @param ground      The nodes and their material.
 * @param wave        Annual harmonic of the sol-air temperature; of the surface itself for an infinite conductance.
 * @param day         Days since 1 January.
 * @param conductance Between the two [W m⁻² K⁻¹].
 * @returns Temperature of each node [°C].
 *
 * Formula: T(z, t) = mean + Re[(c - i s) e^(iωt) G e^(-(1 + i) z/D)], G = 1/(1 + λ(1 + i)/(D h)); below 0 °C a quarter
 * of it, because freezing water and snow hold the cold off (our judgement).
 * Source: Carslaw, Jaeger (1959). Conduction of Heat in Solids, 2.6.
 */
export function annualProfile(ground: Ground, wave: AnnualHarmonic, day: number, conductance: number): Float64Array {
  const dampingCm = dampingDepthCm(diffusivityOf(ground), YEAR_H);
  const resistance = ground.conductivity / ((dampingCm / 100) * conductance);
  const gain = 1 / Math.hypot(1 + resistance, resistance);
  const lag = Math.atan2(resistance, 1 + resistance);
  const angle = (2 * Math.PI * day) / YEAR_DAYS;
  return Float64Array.from(ground.depthsCm, (depth) => {
    const depths = depth / dampingCm;
    const turned = angle - lag - depths;
    const amplitude = gain * Math.exp(-depths);
    const tempC = wave.meanC + amplitude * (wave.cosineK * Math.cos(turned) + wave.sineK * Math.sin(turned));
    return tempC < 0 ? FROZEN_SHARE * tempC : tempC;
  });
}
