import { DAY_MS, HOUR_MS } from '../../basics/calendar.js';
import { type Fact, followedBy } from '../../basics/fact.js';
import type { SourceState } from '../store/store.js';
import { factStored } from '../store/stored-fact.js';
import type { BedNote } from './bed-facts.js';

/** One or two failures come and go. */
const FEW_FAILURES = 2;
/** An answer missed this often is old. */
const MISSED = 2;

/**
 * The note on a place's source for answers that rest on it: the source fails, or its last answer is old.
 *
 * @param state What the store keeps of it; undefined where the place has no source.
 * @returns null where there is nothing to heed.
 */
export function sourceNote(state: SourceState | undefined, nowMs: number): Fact | null {
  if (!state) return null;
  const { fetchedAtMs, failures, lastError, everyHours } = state;
  const ageMs = fetchedAtMs === null ? null : Math.max(0, nowMs - fetchedAtMs);
  const because = (note: BedNote): Fact => followedBy(note, lastError === null ? undefined : factStored(lastError));
  if (failures > (ageMs === null ? 0 : FEW_FAILURES)) {
    return because({ code: 'source-failing', params: { failures, ...ageOf(ageMs) } });
  }
  if (ageMs !== null && ageMs <= (1 + MISSED) * everyHours * HOUR_MS) return null;
  return because({ code: 'source-stale', params: ageOf(ageMs) });
}

const ageOf = (ageMs: number | null) => ({
  ageHours: ageMs === null ? null : Math.floor(ageMs / HOUR_MS),
  ageDays: ageMs !== null && ageMs >= 2 * DAY_MS ? Math.floor(ageMs / DAY_MS) : 0,
});
