import { probit } from '../../basics/numerics/probit.js';
import { pieceAt, type StraightPieces, straightPieces } from '../curve/straight-pieces.js';
import { germinableCohorts, type HourlyProgress, type Seed } from './cohorts.js';

/** Tables by sigma, 16 kB each: a crop has one, and learning from counts tries a few more. */
const speeds = new Map<number, (share: number) => number>();
const MAX_SIGMAS_KEPT = 64;

/** Steps of the table over shares, and the share under which the table would be too coarse. */
const STEPS = 2048;
const EXACT_BELOW = 0.1;

/**
 * Speed of the median germinating seed relative to the lot's median when only `share` of the lot can germinate.
 *
 * @param sigmaLog10 Standard deviation of log10 of the time to come up, 0 to 0.3.
 * @returns 10^(spread Φ⁻¹(share/2)) for a share from 0 to 1.
 *
 * Formula: a cubic through four neighbours of a table of 2,049 shares; worked out in full below a share of 0.1.
 * Accuracy: relative error under 2e-11.
 * @example medianSpeed(0.1)(1) // => 1
 */
export function medianSpeed(sigmaLog10: number): (share: number) => number {
  const kept = speeds.get(sigmaLog10);
  if (kept) return kept;
  const speed = speedsOf(sigmaLog10);
  if (speeds.size >= MAX_SIGMAS_KEPT) speeds.clear();
  speeds.set(sigmaLog10, speed);
  return speed;
}

function speedsOf(sigmaLog10: number): (share: number) => number {
  const exact = (share: number): number => 10 ** (sigmaLog10 * probit(0.5 * share));
  // One step beyond a share of 1, for the cubic there.
  const table = Float64Array.from({ length: STEPS + 2 }, (_, i) => exact(i / STEPS));
  return (share) => {
    if (share < EXACT_BELOW) return exact(share);
    const i = Math.min(STEPS - 1, Math.floor(share * STEPS));
    const u = share * STEPS - i;
    const before = table[i - 1]!;
    const left = table[i]!;
    const right = table[i + 1]!;
    const after = table[i + 2]!;
    const second = (before - 2 * left + right) / 2;
    const third = (after - before + 3 * (left - right)) / 6;
    return left + u * (right - left + (u - 1) * (second + (u + 1) * third));
  };
}

/** The table's range [°C] and its steps a kelvin. */
const MIN_C = -40;
const MAX_C = 80;
const STEPS_PER_K = 100;
const KNOWN_STEPS = (MAX_C - MIN_C) * STEPS_PER_K + 1;

/**
 * The seed's progress in each hour of a long record, as `cohortRun` has it, worked out for all hours at once.
 *
 * @param seed    How the seed answers to temperature.
 * @param hourlyC Hourly mean temperature at the seed [°C]. Shape (nHours); NaN: not known, and nothing moves.
 * @param fromH   The first hour that is needed.
 * @param toH     The hour after the last.
 * @returns Progress of every hour from `fromH` to `toH`; 0 outside. Shape (nHours).
 */
export function hourlyProgress(seed: Seed, hourlyC: Float64Array, fromH: number, toH: number): HourlyProgress {
  const hourly: HourlyProgress = {
    germinable: new Uint8Array(hourlyC.length),
    progressPerHour: new Float64Array(hourlyC.length),
  };
  addProgress(hourly, progressByTemperature(seed), hourlyC, fromH, toH);
  return hourly;
}

/**
 * The same for one record after another, each written over the last.
 *
 * @returns Writes the progress of a record's hours into room enough for them.
 */
export function progressInto(seed: Seed): (hourly: HourlyProgress, hourlyC: Float64Array) => void {
  const known = progressByTemperature(seed);
  return (hourly, hourlyC) => addProgress(hourly, known, hourlyC, 0, hourlyC.length);
}

/** A function that is called for each month of hours is soon compiled for good; one long loop is compiled anew by each question. */
const CHUNK_H = 30 * 24;

/** Progress at each hundredth of a degree, worked out when it first occurs: past soil comes in hundredths of a degree. */
interface ProgressByTemperature {
  readonly pieces: StraightPieces;
  readonly speed: (share: number) => number;
  readonly perHour: number;
  readonly germinable: Uint8Array;
  /** NaN: not worked out yet. */
  readonly progressPerHour: Float64Array;
}

const progressByTemperature = ({ curve, sigmaLog10, timeFactor }: Seed): ProgressByTemperature => ({
  pieces: straightPieces(curve),
  speed: medianSpeed(sigmaLog10),
  perHour: 1 / 24 / timeFactor,
  germinable: new Uint8Array(KNOWN_STEPS),
  progressPerHour: new Float64Array(KNOWN_STEPS).fill(NaN),
});

function addProgress(
  hourly: HourlyProgress,
  known: ProgressByTemperature,
  hourlyC: Float64Array,
  fromH: number,
  toH: number,
): void {
  for (let hour = fromH; hour < toH; hour += CHUNK_H)
    addProgressOfChunk(hourly, known, hourlyC, hour, Math.min(toH, hour + CHUNK_H));
}

function addProgressOfChunk(
  hourly: HourlyProgress,
  known: ProgressByTemperature,
  hourlyC: Float64Array,
  fromH: number,
  toH: number,
): void {
  const { germinable, progressPerHour } = hourly;
  const { pieces, speed, perHour, germinable: knownAwake, progressPerHour: knownProgress } = known;
  let piece = 0;
  for (let hour = fromH; hour < toH; hour++) {
    const tempC = hourlyC[hour]!;
    germinable[hour] = 0;
    progressPerHour[hour] = 0;
    if (Number.isNaN(tempC)) continue;
    const steps = Math.round(tempC * STEPS_PER_K);
    const place = steps - MIN_C * STEPS_PER_K;
    const isInSteps = steps / STEPS_PER_K === tempC && place >= 0 && place < KNOWN_STEPS;
    if (isInSteps && knownProgress[place]! >= 0) {
      germinable[hour] = knownAwake[place]!;
      progressPerHour[hour] = knownProgress[place]!;
      continue;
    }
    piece = pieceAt(pieces.fromC, tempC, piece);
    const beyondC = tempC - pieces.fromC[piece]!;
    const rate = pieces.rate[piece]! + pieces.ratePerK[piece]! * beyondC;
    if (rate > 0) {
      const share = pieces.share[piece]! + pieces.sharePerK[piece]! * beyondC;
      germinable[hour] = germinableCohorts(rate, share);
      if (germinable[hour]! > 0) progressPerHour[hour] = rate * speed(share) * perHour;
    }
    if (!isInSteps) continue;
    knownAwake[place] = germinable[hour]!;
    knownProgress[place] = progressPerHour[hour]!;
  }
}
