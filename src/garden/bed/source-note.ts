import { DAY_MS, HOUR_MS } from '../../basics/calendar.js';
import type { SourceState } from '../store/store.js';

/** One or two failures come and go. */
const FEW_FAILURES = 2;
/** An answer missed this often is old. */
const MISSED = 2;

/**
 * What an answer that rests on a place's source should say of it: that it is failing, or that what it said last is old.
 *
 * @param state What the store keeps of it; undefined where the place has no source.
 * @returns null where there is nothing to heed.
 */
export function sourceNote(
  state: SourceState | undefined,
  nowMs: number,
): { readonly code: string; readonly text: string } | null {
  if (!state) return null;
  const { fetchedAtMs, failures, lastError, everyHours } = state;
  const why = lastError ? ` ${lastError}` : '';
  if (fetchedAtMs === null) {
    if (failures === 0) return stale("The place's source has not been asked yet; it will be within minutes.");
    return failing(`The place's source has never answered well, in ${times(failures)}.${why}`);
  }
  const ageMs = Math.max(0, nowMs - fetchedAtMs);
  const inUse = `Its last good answer, ${ageInWords(ageMs)} old, stays in use.`;
  if (failures > FEW_FAILURES)
    return failing(`The place's source has failed ${times(failures)} running. ${inUse}${why}`);
  if (ageMs <= (1 + MISSED) * everyHours * HOUR_MS) return null;
  return stale(`The place's source is behind. ${inUse}${why}`);
}

const stale = (text: string) => ({ code: 'source-stale', text });
const failing = (text: string) => ({ code: 'source-failing', text });
const times = (n: number): string => (n === 1 ? 'one try' : `${n} tries`);

function ageInWords(ms: number): string {
  const [n, unit] = ms >= 2 * DAY_MS ? [Math.floor(ms / DAY_MS), 'day'] : [Math.floor(ms / HOUR_MS), 'hour'];
  return n === 0 ? 'less than an hour' : `${n} ${unit}${n === 1 ? '' : 's'}`;
}
