import { ScienceError } from '../../basics/errors.js';
import { dampingDepthCm } from '../conduction/damping.js';
import { fft } from '../conduction/fft.js';

/** Fewer hours say too little about the days around them [h]. */
export const MIN_INVERSION_HOURS = 48;

/** Periods restored in full; below, periods left out because their gain amplifies mostly noise [h]. */
const IN_FULL_H = 8;
const LEFT_OUT_H = 4;

/** Padding before and after the record; its outer half fades to the record's mean. */
const BEYOND_H = 96;
const FADES_H = 48;

/**
 * Upward inversion: hourly temperatures higher up, from those that a probe measured deeper down.
 *
 * Every wave regains the amplitude that it lost on the way down and is moved earlier by its lag. Errors grow in the
 * same way, so the reach is limited to one damping depth of the diurnal wave. Waves shorter than some 5 h are lost.
 *
 * @param hourlyC        Temperatures at `fromCm`, evenly an hour apart, none missing [°C]. Shape (n), n >= 48.
 * @param fromCm         Depth of the probe [cm].
 * @param toCm           Depth wanted [cm], at most the probe's, and at most one damping depth above it.
 * @param diffusivityM2s Thermal diffusivity of the ground between [m²/s], 0.5e-7 to 15e-7.
 * @returns Temperatures at `toCm`, at the same times [°C]. Shape (n).
 * @throws ScienceError `out-of-range` for fewer hours, a missing value, a depth below the probe's or beyond its reach.
 *
 * Formula: X'(ω) = X(ω) exp((1 + i) dz sqrt(ω / 2κ)) L(ω); L is 1 for periods from 8 h, 0 to 4 h, a half-cosine of
 * frequency between. The record is padded with its first and last day, repeated with the change over them.
 * Accuracy: two sines of 24 and 12 h, 10 K in all, come back within 0.04 K at every hour. Bare ground at Hamburg, April
 * to October 2018, 14 days at a time, 6e-7 m²/s fitted to the same plot: 10 to 5 cm RMSE 0.59 K, within 12 h of an end
 * 0.70 K, against 2.1 K for 10 cm as it is. Reflecting the record at its ends gave 0.96 K there. A logger's steps
 * grow with the gain: steps of 0.1 K make 0.3 K at most over one damping depth. Two days alone err a tenth more than
 * five.
 * Cost: two transforms of the power of two above n + 192; a year in some 10 ms.
 * Source: Carslaw, Jaeger (1959). Conduction of Heat in Solids, 2.6, inverted; limits, ends and cut are ours.
 * @example upwardInversionC(30 days of 20 + 3 sin(2π h/24) °C, 10, 1, 5e-7) // => 20 + 6.46 sin(2π (h + 2.93)/24) °C
 */
export function upwardInversionC(
  hourlyC: ArrayLike<number>,
  fromCm: number,
  toCm: number,
  diffusivityM2s: number,
): Float64Array {
  const n = hourlyC.length;
  const upCm = fromCm - toCm;
  if (n < MIN_INVERSION_HOURS)
    throw new ScienceError('out-of-range', `shallowerC takes at least ${MIN_INVERSION_HOURS} hours, not ${n}`);
  if (!(upCm >= 0 && upCm <= dampingDepthCm(diffusivityM2s, 24)))
    throw new ScienceError('out-of-range', `shallowerC goes up by one damping depth at most, not ${upCm} cm`);
  const meanC = meanOf(hourlyC);
  if (!Number.isFinite(meanC)) throw new ScienceError('out-of-range', 'shallowerC takes hours with none missing');

  const real = withDaysBeyond(hourlyC, meanC);
  const imag = new Float64Array(real.length);
  fft(real, imag);
  lift(real, imag, upCm, diffusivityM2s);
  fft(imag, real);
  return Float64Array.from({ length: n }, (_, hour) => meanC + real[BEYOND_H + hour]! / real.length);
}

function meanOf(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum / values.length;
}

/** Differences from the mean, padded with days that fade into it, then with zeros to a power of two. */
function withDaysBeyond(hourlyC: ArrayLike<number>, meanC: number): Float64Array {
  const n = hourlyC.length;
  const lengthH = 2 ** Math.ceil(Math.log2(n + 2 * BEYOND_H));
  const values = new Float64Array(lengthH);
  for (let hour = 0; hour < n; hour++) values[BEYOND_H + hour] = hourlyC[hour]! - meanC;
  const [first, end] = [BEYOND_H, BEYOND_H + n];
  const changeOfFirst = values[first + 24]! - values[first]!;
  const changeOfLast = values[end - 1]! - values[end - 25]!;
  for (let away = 0; away < BEYOND_H; away++) {
    values[first - 1 - away] = values[first + 23 - away]! - changeOfFirst;
    values[end + away] = values[end + away - 24]! + changeOfLast;
  }
  for (let inward = 0; inward < FADES_H; inward++) {
    const share = 0.5 - 0.5 * Math.cos((Math.PI * (inward + 0.5)) / FADES_H);
    values[inward]! *= share;
    values[end + BEYOND_H - 1 - inward]! *= share;
  }
  return values;
}

/** Multiplies a real record's spectrum. The negative half is dropped: twice the other half has the same real part. */
function lift(real: Float64Array, imag: Float64Array, upCm: number, diffusivityM2s: number): void {
  const n = real.length;
  for (let k = 1; k < n; k++) {
    const passed = k < n / 2 ? 2 * shareLifted(n / k) : 0;
    if (passed === 0) {
      real[k] = 0;
      imag[k] = 0;
      continue;
    }
    const depths = upCm / dampingDepthCm(diffusivityM2s, n / k);
    const gain = passed * Math.exp(depths);
    const c = gain * Math.cos(depths);
    const s = gain * Math.sin(depths);
    [real[k], imag[k]] = [real[k]! * c - imag[k]! * s, real[k]! * s + imag[k]! * c];
  }
}

function shareLifted(periodH: number): number {
  const beyond = (1 / periodH - 1 / IN_FULL_H) / (1 / LEFT_OUT_H - 1 / IN_FULL_H);
  return 0.5 + 0.5 * Math.cos(Math.PI * Math.min(1, Math.max(0, beyond)));
}
