import { probit } from '../../basics/numerics/probit.js';
import { pieceAt, type StraightPieces, straightPieces } from '../curve/straight-pieces.js';
import { cohortsAwake, type Pace, type Seed } from './cohorts.js';

/** Tables of some spreads, 16 kB each: a crop has one, and what counts teach tries a few more. */
const speeds = new Map<number, (share: number) => number>();
const MAX_SPREADS_KEPT = 64;

/** Steps of the table over shares, and the share under which the table would be too coarse. */
const STEPS = 2048;
const EXACT_BELOW = 0.1;

/**
 * How fast the seed that half emergence is timed by is, beside seed of middling speed, where only a share comes at all.
 *
 * @param spreadLog10 Standard deviation of log10 of the time to come up, 0 to 0.3.
 * @returns 10^(spread Φ⁻¹(share/2)) for a share from 0 to 1.
 *
 * Formula: a cubic through four neighbours of a table of 2,049 shares; worked out in full below a share of 0.1.
 * Accuracy: relative error under 2e-11.
 * @example medianSpeed(0.1)(1) // => 1
 */
export function medianSpeed(spreadLog10: number): (share: number) => number {
  const kept = speeds.get(spreadLog10);
  if (kept) return kept;
  const speed = speedsOf(spreadLog10);
  if (speeds.size >= MAX_SPREADS_KEPT) speeds.clear();
  speeds.set(spreadLog10, speed);
  return speed;
}

function speedsOf(spreadLog10: number): (share: number) => number {
  const exact = (share: number): number => 10 ** (spreadLog10 * probit(0.5 * share));
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

/** Temperatures between these [°C], in so many steps a kelvin, are worked out once. */
const COLDEST_C = -40;
const WARMEST_C = 80;
const STEPS_PER_K = 100;
const KNOWN_STEPS = (WARMEST_C - COLDEST_C) * STEPS_PER_K + 1;

/**
 * What each hour of a long record does for the seed: the pace of `cohortRun`, worked out for all hours at once.
 *
 * @param seed    How the seed answers to temperature.
 * @param hourlyC Hourly mean temperature at the seed [°C]. Shape (nHours); NaN: not known, and nothing moves.
 * @param fromH   The first hour that is needed.
 * @param toH     The hour after the last.
 * @returns Pace of every hour from `fromH` to `toH`; 0 outside. Shape (nHours).
 */
export function hourlyPace(seed: Seed, hourlyC: Float64Array, fromH: number, toH: number): Pace {
  const pace: Pace = { awake: new Uint8Array(hourlyC.length), step: new Float64Array(hourlyC.length) };
  const known = paceByTemperature(seed);
  for (let hour = fromH; hour < toH; hour += CHUNK_H)
    addPace(pace, known, hourlyC, hour, Math.min(toH, hour + CHUNK_H));
  return pace;
}

/** A function that is called for each month of hours is soon compiled for good; one long loop is compiled anew by each question. */
const CHUNK_H = 30 * 24;

/** The pace at each step of temperature, worked out when it is first met: past soil comes in hundredths of a degree. */
interface PaceByTemperature {
  readonly pieces: StraightPieces;
  readonly speed: (share: number) => number;
  readonly perHour: number;
  readonly awake: Uint8Array;
  /** NaN: not worked out yet. */
  readonly step: Float64Array;
}

const paceByTemperature = ({ curve, spreadLog10, timeFactor }: Seed): PaceByTemperature => ({
  pieces: straightPieces(curve),
  speed: medianSpeed(spreadLog10),
  perHour: 1 / 24 / timeFactor,
  awake: new Uint8Array(KNOWN_STEPS),
  step: new Float64Array(KNOWN_STEPS).fill(NaN),
});

function addPace(pace: Pace, known: PaceByTemperature, hourlyC: Float64Array, fromH: number, toH: number): void {
  const { awake, step } = pace;
  const { pieces, speed, perHour, awake: knownAwake, step: knownStep } = known;
  let piece = 0;
  for (let hour = fromH; hour < toH; hour++) {
    const tempC = hourlyC[hour]!;
    if (Number.isNaN(tempC)) continue;
    const steps = Math.round(tempC * STEPS_PER_K);
    const place = steps - COLDEST_C * STEPS_PER_K;
    const isInSteps = steps / STEPS_PER_K === tempC && place >= 0 && place < KNOWN_STEPS;
    if (isInSteps && knownStep[place]! >= 0) {
      awake[hour] = knownAwake[place]!;
      step[hour] = knownStep[place]!;
      continue;
    }
    piece = pieceAt(pieces.fromC, tempC, piece);
    const beyondC = tempC - pieces.fromC[piece]!;
    const rate = pieces.rate[piece]! + pieces.ratePerK[piece]! * beyondC;
    if (rate > 0) {
      const share = pieces.share[piece]! + pieces.sharePerK[piece]! * beyondC;
      awake[hour] = cohortsAwake(rate, share);
      if (awake[hour]! > 0) step[hour] = rate * speed(share) * perHour;
    }
    if (!isInSteps) continue;
    knownAwake[place] = awake[hour]!;
    knownStep[place] = step[hour]!;
  }
}
