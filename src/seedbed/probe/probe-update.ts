import { ScienceError } from '../../basics/errors.js';
import { choleskyFactor, solveLower } from '../../basics/numerics/cholesky.js';
import { type ResidualModel, residualCovarianceK2, residualVarianceK2 } from '../surface/residual-model.js';

/** Days on any common count, and the response of 5 cm to sunshine on each; both of shape (n), in time order. */
export interface DaysWithSun {
  readonly days: ArrayLike<number>;
  readonly sun: ArrayLike<number>;
}

/** Residuals of a probe: measured less modelled daily mean [K] on its days. */
export interface ProbeDays extends DaysWithSun {
  readonly residualsK: ArrayLike<number>;
}

export interface Correction {
  /** Added to the model's daily mean [K]. Shape (m). */
  readonly correctionK: Float64Array;
  /** Standard deviation of a measured daily mean about the corrected one [K]. Shape (m). */
  readonly sdK: Float64Array;
}

/** Readings used in full, the latest; of older ones the first of every three days, and none beyond a year. */
const USED_IN_FULL = 60;
const THINNED_TO_DAYS = 3;
const DAYS_BACK = 365;

/**
 * Calibration of the model by a probe: the correction of other days, and its standard deviation.
 *
 * Close to the readings the correction follows them; over weeks it decays to the bed's own constant difference.
 *
 * @param model The residuals' prior.
 * @param probe The readings; none is allowed, and then the correction is 0 and the sd the prior's.
 * @param asked Days to correct, before or after the readings or among them.
 * @returns Correction and standard deviation on each of these days.
 * @throws ScienceError `out-of-range` for a reading that is no number, or lists of different lengths.
 *
 * Formula: K = k(probe, probe) + noise I; correction = k(t, probe) K⁻¹ r;
 * variance = k(t, t) + noise - k(t, probe) K⁻¹ k(probe, t); k as in residual-model.
 * Validity: as the residual model's; over the 60 days after 14 of probe the median station's RMSE was 1.15 K.
 * Cost: one factor of at most 162 daily readings, then n²/2 for each day to correct.
 * Source: Rasmussen, Williams (2006). Gaussian Processes for Machine Learning, eqns 2.23-2.24 and algorithm 2.1; the
 * year's limit is ours.
 * @example probeUpdate(T1 at w 0.784, 7 days of about +1.3 K at x 0.1, the day after) // => 1.2781 K, sd 0.6731 K
 */
export function probeUpdate(model: ResidualModel, probe: ProbeDays, asked: DaysWithSun): Correction {
  const { days, sun, residualsK } = probe;
  if (sun.length !== days.length || residualsK.length !== days.length || asked.sun.length !== asked.days.length)
    throw new ScienceError('out-of-range', 'probeUpdate takes a residual and a response to sunshine for every day');
  const used = thinned(days);
  const n = used.length;
  const noiseK2 = model.scale * model.noiseK2;
  const matrix = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      const [one, other] = [used[i]!, used[j]!];
      matrix[i * n + j] = residualCovarianceK2(model, days[one]! - days[other]!, sun[one]!, sun[other]!);
    }
    matrix[i * n + i]! += noiseK2;
  }
  const lower = choleskyFactor(matrix, n);
  const residuals = solveLower(
    lower,
    Float64Array.from(used, (i) => residualsK[i]!),
  );
  if (!residuals.every(Number.isFinite)) throw new ScienceError('out-of-range', 'probeUpdate takes finite readings');

  const nAsked = asked.days.length;
  const correctionK = new Float64Array(nAsked);
  const sdK = new Float64Array(nAsked);
  for (let k = 0; k < nAsked; k++) {
    const [day, x] = [asked.days[k]!, asked.sun[k]!];
    const shared = solveLower(
      lower,
      Float64Array.from(used, (i) => residualCovarianceK2(model, day - days[i]!, x, sun[i]!)),
    );
    let correction = 0;
    let explainedK2 = 0;
    for (let i = 0; i < n; i++) {
      correction += shared[i]! * residuals[i]!;
      explainedK2 += shared[i]! * shared[i]!;
    }
    correctionK[k] = correction;
    // Readings cannot reduce the noise; the bound only guards against rounding.
    sdK[k] = Math.sqrt(Math.max(noiseK2, residualVarianceK2(model, x) - explainedK2));
  }
  return { correctionK, sdK };
}

/** Indices of the readings used. Blocks count from day 0, so that a new reading leaves earlier choices alone. */
function thinned(days: ArrayLike<number>): number[] {
  const inFull = Math.max(0, days.length - USED_IN_FULL);
  const oldest = days[days.length - 1]! - DAYS_BACK;
  const used: number[] = [];
  let block = -Infinity;
  for (let i = 0; i < days.length; i++) {
    const own = Math.floor(days[i]! / THINNED_TO_DAYS);
    if (i >= inFull || (own > block && days[i]! >= oldest)) {
      used.push(i);
      block = own;
    }
  }
  return used;
}
