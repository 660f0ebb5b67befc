import { sourceStatus } from '../../../garden/bed/source-note.js';
import { sourceFact } from '../../../garden/store/connection-facts.js';
import type { PlaceSource, SourceState } from '../../../garden/store/store.js';
import { factStored } from '../../../garden/store/stored-fact.js';

/** Which sources the service asks. */
export type AllowedSources = 'off' | 'presets' | 'any';

/** True if the service asks this source. */
export const isAllowed = ({ preset }: PlaceSource, allowed: AllowedSources): boolean =>
  allowed === 'any' || (allowed === 'presets' && preset !== null);

/** A source as a PUT takes it. */
export function serializeSource({ preset, format, url, everyHours }: PlaceSource) {
  return preset === null ? { format: format!, url: url!, everyHours } : { preset, everyHours };
}

const instantText = (atMs: number | null): string | null => (atMs === null ? null : new Date(atMs).toISOString());

/** A source with its state. */
export function serializeSourceState(state: SourceState, nowMs: number, allowed: AllowedSources) {
  const { source, fetchedAtMs, triedAtMs, nextAtMs, notBeforeMs, failures, lastError, days } = state;
  const isAsked = isAllowed(source, allowed);
  const why = isAsked
    ? lastError === null
      ? null
      : factStored(lastError)
    : sourceFact('source.off', { allowed: allowed === 'off' ? 'off' : 'presets' });
  const nextMs = Math.max(nextAtMs, notBeforeMs ?? 0);
  return {
    ...serializeSource(source),
    state: {
      status: isAsked ? sourceStatus(state, nowMs) : 'off',
      fetchedAt: instantText(fetchedAtMs),
      triedAt: instantText(triedAtMs),
      // One that was never asked is due since it was put.
      nextTryAt: isAsked && nextMs > 0 ? instantText(nextMs) : null,
      failures,
      why: why && { ...why, text: null },
      days,
    },
  };
}
