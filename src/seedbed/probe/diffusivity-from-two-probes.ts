import { ScienceError } from '../../basics/errors.js';

/** What the two ways of reckoning say, null where nothing explains the two records; and what to use, if they agree. */
export interface DiffusivityFound {
  readonly bySwingM2s: number | null;
  readonly byLagM2s: number | null;
  readonly diffusivityM2s: number | null;
}

/** Three days are the least that tell a daily wave from a drift [h]: our judgement. */
const MIN_HOURS = 72;
/** Swing and lag agree within this ratio [1]: our judgement, from 27 weeks at Hamburg. */
const LARGER_OVER_SMALLER = 1.3;
/** Diffusivities of soil lie between these, dry peat's and wet sand's [m²/s]: our judgement. */
const MIN_M2S = 0.5e-7;
const MAX_M2S = 15e-7;
const PER_SECOND = (2 * Math.PI) / 86_400;

/**
 * Thermal diffusivity from how much smaller the day's swing is deeper down.
 *
 * @param upperK  Swing of the upper probe, half or whole [K].
 * @param lowerK  The same of the lower [K], > 0.
 * @param apartCm Depth of the lower less that of the upper [cm].
 * @returns Diffusivity [m²/s], or null where the lower swings as much or more: conduction cannot do that.
 *
 * Formula: κ = ω dz² / (2 ln²(A1 / A2)), ω = 2π / 86400 s
 * Source: Carslaw, Jaeger (1959). Conduction of Heat in Solids, 2.6, solved for κ.
 * @example diffusivityFromSwings(10, 7, 5) // => 7.145e-7
 */
export function diffusivityFromSwings(upperK: number, lowerK: number, apartCm: number): number | null {
  return fromDampingDepths(Math.log(upperK / lowerK), apartCm);
}

/**
 * Thermal diffusivity from how much later the day's wave comes deeper down.
 *
 * @param lagH    Hours from the upper probe's wave to the lower's.
 * @param apartCm Depth of the lower less that of the upper [cm].
 * @returns Diffusivity [m²/s], or null where the lower is not later.
 *
 * Formula: κ = ω dz² / (2 Δφ²), Δφ = 2π lag / 24
 * Source: as `diffusivityFromSwings`.
 * @example diffusivityFromLag(1.6287, 5) // => 5.0e-7
 */
export function diffusivityFromLag(lagH: number, apartCm: number): number | null {
  return fromDampingDepths((2 * Math.PI * lagH) / 24, apartCm);
}

/**
 * Thermal diffusivity of the ground between two probes, where swing and lag tell the same story.
 *
 * They do not where a probe is badly placed, a clock is wrong, or heat moves otherwise than by conduction: a sensor
 * lying on the surface agrees with no diffusivity at all.
 *
 * @param upperC  Hourly temperatures of the upper probe, none missing [°C]. Shape (n), n >= 72.
 * @param lowerC  The lower's, at the same times [°C]. Shape (n).
 * @param apartCm Depth of the lower less that of the upper [cm], > 0.
 * @returns Both results; and their middle where the larger is at most 1.3 times the smaller and it lies in 0.5e-7 to
 * 15e-7 m²/s, else null.
 * @throws ScienceError `out-of-range` for fewer hours, lengths that differ, or a missing value.
 *
 * Formula: X = Σ (T - mean) sin²(π h/n) e^(-2πi h/24), which keeps drifts out; ln(X1/X2) = dz/D (1 + i); κ = ω D²/2.
 * The middle is that of dz/D.
 * Validity: bare ground at Hamburg, April to October 2018, 27 weeks at 5 and 10 cm: 4.3e-7 to 5.5e-7 by swing, 5.6e-7
 * to 6.8e-7 by lag (10th and 90th percentile), accepted in 18 weeks; at 10 and 20 cm in 2 weeks only.
 * Source: as `diffusivityFromSwings`; the limits are our own judgement.
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
  if (!Number.isFinite(upper.swingK + lower.swingK))
    throw new ScienceError('out-of-range', 'diffusivityFromTwoProbes takes hours with none missing');
  const bySwing = Math.log(upper.swingK / lower.swingK);
  const turn = upper.phase - lower.phase;
  const byLag = turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
  const bySwingM2s = fromDampingDepths(bySwing, apartCm);
  const byLagM2s = fromDampingDepths(byLag, apartCm);
  const middleM2s = fromDampingDepths((bySwing + byLag) / 2, apartCm);
  const agree =
    bySwingM2s !== null &&
    byLagM2s !== null &&
    Math.max(bySwingM2s, byLagM2s) <= LARGER_OVER_SMALLER * Math.min(bySwingM2s, byLagM2s);
  const isSoil = middleM2s !== null && middleM2s >= MIN_M2S && middleM2s <= MAX_M2S;
  return { bySwingM2s, byLagM2s, diffusivityM2s: agree && isSoil ? middleM2s : null };
}

/** κ where `apartCm` are so many damping depths of the daily wave. */
function fromDampingDepths(depths: number, apartCm: number): number | null {
  return depths > 0 && depths < Infinity ? (PER_SECOND * (apartCm / 100) ** 2) / (2 * depths ** 2) : null;
}

/** The record's daily wave: its swing, to a factor of the record's length, and its phase. */
function dailyWave(hourlyC: ArrayLike<number>): { swingK: number; phase: number } {
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
  return { swingK: Math.hypot(real, imag), phase: Math.atan2(imag, real) };
}
