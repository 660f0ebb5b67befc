import { HOUR_MS } from '../../basics/calendar.js';

/** Up to this long between two readings the temperature is taken to run straight, whatever the usual step [ms]. */
const ALWAYS_JOINED_MS = 3 * HOUR_MS;

/** Readings further apart than this are never joined by a straight line, however rare they usually are [ms]. */
const NEVER_JOINED_MS = 36 * HOUR_MS;

/** Number of evenly spread steps that represent all. */
const MAX_STEPS = 20_000;

/** The usual time between readings: the median step [ms]; null with fewer than two readings. */
export function usualStepMs(atMs: Float64Array): number | null {
  if (atMs.length < 2) return null;
  const stride = Math.ceil((atMs.length - 1) / MAX_STEPS);
  const steps = new Float64Array(Math.floor((atMs.length - 2) / stride) + 1);
  for (let i = 0; i < steps.length; i++) steps[i] = atMs[i * stride + 1]! - atMs[i * stride]!;
  steps.sort();
  return steps[steps.length >> 1]!;
}

/** Readings further apart than this have a gap between them [ms]: 3 h, or half as long again as the usual step, up to 36 h. */
export const longestJoinedMs = (usualMs: number | null): number =>
  Math.max(ALWAYS_JOINED_MS, Math.min(NEVER_JOINED_MS, 1.5 * (usualMs ?? 0)));
