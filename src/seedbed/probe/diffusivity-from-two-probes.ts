import { ScienceError } from '../../basics/errors.js';

/** The two estimates, null when conduction cannot explain the two records; and the one to use, if they agree. */
export interface DiffusivityFound {
  readonly byAmplitudeM2s: number | null;
  readonly byLagM2s: number | null;
  readonly diffusivityM2s: number | null;
}

/** Three days are the least that separate a diurnal wave from a trend [h]: our judgement. */
const MIN_HOURS = 72;
/**
 * Largest ratio of the amplitude and lag estimates that counts as agreement [1]: our judgement, from 27 weeks at
 * Hamburg.
 */
const LARGER_OVER_SMALLER = 1.3;
/** Range of soil diffusivities, dry peat to wet sand [m²/s]: our judgement. */
const MIN_M2S = 0.5e-7;
const MAX_M2S = 15e-7;
const PER_SECOND = (2 * Math.PI) / 86_400;

/**
 * Thermal diffusivity from the damping of the diurnal wave with depth.
 *
 * @param upperK  Amplitude or range of the upper probe [K].
 * @param lowerK  The same of the lower [K], > 0.
 * @param apartCm Depth of the lower less that of the upper [cm].
 * @returns Diffusivity [m²/s], or null when the lower is not smaller: conduction cannot do that.
 *
 * Formula: κ = ω dz² / (2 ln²(A1 / A2)), ω = 2π / 86400 s
 * Source: Carslaw, Jaeger (1959). Conduction of Heat in Solids, 2.6, solved for κ.
 * @example diffusivityFromAmplitudes(10, 7, 5) // => 7.145e-7
 */
export function diffusivityFromAmplitudes(upperK: number, lowerK: number, apartCm: number): number | null {
  return fromDampingDepths(Math.log(upperK / lowerK), apartCm);
}

/**
 * Thermal diffusivity from the lag of the diurnal wave with depth.
 *
 * @param lagH    Lag of the lower probe's wave behind the upper's [h].
 * @param apartCm Depth of the lower less that of the upper [cm].
 * @returns Diffusivity [m²/s], or null when the lower is not later.
 *
 * Formula: κ = ω dz² / (2 Δφ²), Δφ = 2π lag / 24
 * Source: as `diffusivityFromAmplitudes`.
 * @example diffusivityFromLag(1.6287, 5) // => 5.0e-7
 */
export function diffusivityFromLag(lagH: number, apartCm: number): number | null {
  return fromDampingDepths((2 * Math.PI * lagH) / 24, apartCm);
}

/**
 * Thermal diffusivity of the ground between two probes, when amplitude and lag agree on it.
 *
 * They disagree when a probe is badly placed, a clock is wrong, or heat moves otherwise than by conduction. A sensor on
 * the surface agrees with no diffusivity at all.
 *
 * @param upperC  Hourly temperatures of the upper probe, none missing [°C]. Shape (n), n >= 72.
 * @param lowerC  The lower's, at the same times [°C]. Shape (n).
 * @param apartCm Depth of the lower less that of the upper [cm], > 0.
 * @returns Both results; and their middle when the larger is at most 1.3 times the smaller and it lies in 0.5e-7 to
 * 15e-7 m²/s, else null.
 * @throws ScienceError `out-of-range` for fewer hours, lengths that differ, or a missing value.
 *
 * Formula: X = Σ (T - mean) sin²(π h/n) e^(-2πi h/24), which suppresses trends; ln(X1/X2) = dz/D (1 + i); κ = ω D²/2.
 * The middle is that of dz/D.
 * Validity: bare ground at Hamburg, April to October 2018, 27 weeks at 5 and 10 cm: 4.3e-7 to 5.5e-7 by amplitude,
 * 5.6e-7 to 6.8e-7 by lag (10th and 90th percentile), accepted in 18 weeks; at 10 and 20 cm in 2 weeks only.
 * Source: as `diffusivityFromAmplitudes`; the limits are our own judgement.
 * @example diffusivityFromTwoProbes(10 K at 5 cm, 7 K at 10 cm 1.36 h later, 5) // => diffusivityM2s 7.15e-7
 */
export function diffusivityFromTwoProbes(
  upperC: ArrayLike<number>,
  lowerC: ArrayLike<number>,
  apartCm: number,
): DiffusivityFound {
  if (upperC.length !== lowerC.length || upperC.length < MIN_HOURS)
    throw new ScienceError('out-of-range', `diffusivityFromTwoProbes takes ${MIN_HOURS} hours or more of both`);
  const upper = dailyWave(upperC);
  const lower = dailyWave(lowerC);
  if (!Number.isFinite(upper.amplitudeK + lower.amplitudeK))
    throw new ScienceError('out-of-range', 'diffusivityFromTwoProbes takes hours with none missing');
  const byAmplitude = Math.log(upper.amplitudeK / lower.amplitudeK);
  const turn = upper.phase - lower.phase;
  const byLag = turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
  const byAmplitudeM2s = fromDampingDepths(byAmplitude, apartCm);
  const byLagM2s = fromDampingDepths(byLag, apartCm);
  const middleM2s = fromDampingDepths((byAmplitude + byLag) / 2, apartCm);
  const agree =
    byAmplitudeM2s !== null &&
    byLagM2s !== null &&
    Math.max(byAmplitudeM2s, byLagM2s) <= LARGER_OVER_SMALLER * Math.min(byAmplitudeM2s, byLagM2s);
  const isSoil = middleM2s !== null && middleM2s >= MIN_M2S && middleM2s <= MAX_M2S;
  return { byAmplitudeM2s, byLagM2s, diffusivityM2s: agree && isSoil ? middleM2s : null };
}

/** κ for which `apartCm` is the given number of damping depths of the diurnal wave. */
function fromDampingDepths(depths: number, apartCm: number): number | null {
  return depths > 0 && depths < Infinity ? (PER_SECOND * (apartCm / 100) ** 2) / (2 * depths ** 2) : null;
}

/** The record's diurnal wave: its amplitude, times a factor of the record's length, and its phase. */
function dailyWave(hourlyC: ArrayLike<number>): { amplitudeK: number; phase: number } {
  const n = hourlyC.length;
  let sum = 0;
  for (let hour = 0; hour < n; hour++) sum += hourlyC[hour]!;
  let real = 0;
  let imag = 0;
  for (let hour = 0; hour < n; hour++) {
    const value = (hourlyC[hour]! - sum / n) * Math.sin((Math.PI * (hour + 0.5)) / n) ** 2;
    real += value * Math.cos((2 * Math.PI * hour) / 24);
    imag -= value * Math.sin((2 * Math.PI * hour) / 24);
  }
  return { amplitudeK: Math.hypot(real, imag), phase: Math.atan2(imag, real) };
}
