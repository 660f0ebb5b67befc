import { DAY_MS, HOUR_MS } from '../../basics/calendar.js';
import { type Fact, followedBy } from '../../basics/fact.js';
import { type PresetName, presetFact, presetNamed, sourcePresets } from '../store/source-presets.js';
import type { PlaceSource, SourceState } from '../store/store.js';
import { factStored } from '../store/stored-fact.js';
import type { BedNote } from './bed-facts.js';

/** One or two failures come and go. */
const FEW_FAILURES = 2;
/** An answer missed this often is old. */
const MISSED = 2;

export type SourceStatus = 'not-asked' | 'ok' | 'stale' | 'failing';

/** How it stands with a source. */
export function sourceStatus({ fetchedAtMs, failures, source }: SourceState, nowMs: number): SourceStatus {
  const ageMs = fetchedAtMs === null ? null : Math.max(0, nowMs - fetchedAtMs);
  if (failures > (ageMs === null ? 0 : FEW_FAILURES)) return 'failing';
  if (ageMs === null) return 'not-asked';
  return ageMs <= (1 + MISSED) * source.everyHours * HOUR_MS ? 'ok' : 'stale';
}

/**
 * What an answer that rests on a place's sources should say of them: that one is failing, that what it said last is old,
 * or that a model's past stands for a thermometer's.
 */
export function sourceNotes(states: readonly SourceState[], nowMs: number): Fact[] {
  const reanalyses = creditedPresets(states).filter((preset) => sourcePresets[preset].isReanalysis);
  return [
    ...states.flatMap((state) => {
      const status = sourceStatus(state, nowMs);
      return status === 'ok' ? [] : sourceFault(state, nowMs, status === 'failing');
    }),
    ...reanalyses.map((preset) => presetFact('reanalysis', { preset })),
  ];
}

/** The sources that have not given what they should have: a question that fails for want of air names them. */
export const failedSources = (states: readonly SourceState[], nowMs: number): Fact[] =>
  states.flatMap((state) =>
    state.failures > 0 || sourceStatus(state, nowMs) !== 'ok' ? sourceFault(state, nowMs, state.failures > 0) : [],
  );

/** The presets among a place's sources that have given days. */
export const creditedPresets = (states: readonly SourceState[]): PresetName[] =>
  states.flatMap(({ fetchedAtMs, source }) => (fetchedAtMs === null ? [] : (presetNamed(source.preset) ?? [])));

/** A source by its publisher's name, or the host of its address. */
export function sourceName({ preset, url }: PlaceSource): string {
  const known = presetNamed(preset);
  if (known) return sourcePresets[known].name;
  return url !== null && URL.canParse(url) ? new URL(url).host : (preset ?? '');
}

function sourceFault(
  { source, fetchedAtMs, failures, lastError }: SourceState,
  nowMs: number,
  isFailing: boolean,
): Fact {
  const ageMs = fetchedAtMs === null ? null : Math.max(0, nowMs - fetchedAtMs);
  const params = { source: sourceName(source), ...ageOf(ageMs) };
  const note: BedNote = isFailing
    ? { code: 'source-failing', params: { failures, ...params } }
    : { code: 'source-stale', params };
  return followedBy(note, lastError === null ? undefined : factStored(lastError));
}

const ageOf = (ageMs: number | null) => ({
  ageHours: ageMs === null ? null : Math.floor(ageMs / HOUR_MS),
  ageDays: ageMs !== null && ageMs >= 2 * DAY_MS ? Math.floor(ageMs / DAY_MS) : 0,
});
