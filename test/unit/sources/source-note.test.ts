import { describe, expect, test } from 'vitest';
import { HOUR_MS } from '../../../src/basics/calendar.js';
import { sourceNote } from '../../../src/garden/bed/source-note.js';
import type { SourceState } from '../../../src/garden/store/store.js';

const nowMs = Date.UTC(2027, 4, 10);
const state = (ageHours: number | null, failures = 0): SourceState => ({
  everyHours: 6,
  fetchedAtMs: ageHours === null ? null : nowMs - ageHours * HOUR_MS,
  triedAtMs: nowMs,
  nextAtMs: nowMs,
  failures,
  lastError: failures > 0 ? 'The source answered with status 503: it is in trouble itself.' : null,
});

describe('an answer that rests on a source', () => {
  test('says nothing of it while it keeps up, or of a place without one', () => {
    expect(sourceNote(undefined, nowMs)).toBeNull();
    expect(sourceNote(state(0), nowMs)).toBeNull();
    expect(sourceNote(state(18), nowMs)).toBeNull();
    expect(sourceNote(state(7, 2), nowMs)).toBeNull();
  });

  test('tells how old it is once it is behind', () => {
    expect(sourceNote(state(19), nowMs)).toEqual({
      code: 'source-stale',
      text: "The place's source is behind. Its last good answer, 19 hours old, stays in use.",
    });
    expect(sourceNote(state(72), nowMs)!.text).toContain('3 days old');
    expect(sourceNote(state(null), nowMs)).toMatchObject({ code: 'source-stale' });
  });

  test('tells that it fails, how often and why, and that the last good answer stays in use', () => {
    expect(sourceNote(state(7, 3), nowMs)).toEqual({
      code: 'source-failing',
      text: "The place's source has failed 3 tries running. Its last good answer, 7 hours old, stays in use. The source answered with status 503: it is in trouble itself.",
    });
    expect(sourceNote(state(0, 9), nowMs)!.text).toContain('less than an hour old');
    expect(sourceNote(state(null, 1), nowMs)!.text).toContain('never answered well, in one try. The source answered');
  });
});
