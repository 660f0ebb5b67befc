import { describe, expect, test } from 'vitest';
import { HOUR_MS } from '../../../src/basics/calendar.js';
import { sourceNotes } from '../../../src/garden/bed/source-note.js';
import type { SourceState } from '../../../src/garden/store/store.js';
import { sayPlainly } from '../words/say-plainly.js';

const nowMs = Date.UTC(2027, 4, 10);
const state = (ageHours: number | null, failures = 0): SourceState => ({
  source: { preset: null, format: 'station-day-file', url: 'https://weather.example/a', everyHours: 6 },
  fetchedAtMs: ageHours === null ? null : nowMs - ageHours * HOUR_MS,
  triedAtMs: nowMs,
  nextAtMs: nowMs,
  notBeforeMs: null,
  days: null,
  failures,
  lastError: failures > 0 ? 'The source answered with status 503: it is in trouble itself.' : null,
});

const sourceNote = (one: SourceState | undefined) => sourceNotes(one ? [one] : [], nowMs)[0] ?? null;
const textOf = (one: SourceState): string => sayPlainly(sourceNote(one)!);

describe('an answer that rests on a source', () => {
  test('says nothing of it while it keeps up, or of a place without one', () => {
    expect(sourceNote(undefined)).toBeNull();
    expect(sourceNote(state(0))).toBeNull();
    expect(sourceNote(state(18))).toBeNull();
    expect(sourceNote(state(7, 2))).toBeNull();
  });

  test('tells how old it is once it is behind', () => {
    expect(sourceNote(state(19))).toEqual({
      code: 'source-stale',
      params: { source: 'weather.example', ageHours: 19, ageDays: 0 },
    });
    expect(textOf(state(19))).toBe(
      'The place’s source, weather.example, is behind. Its last good answer, 19 hours old, stays in use.',
    );
    expect(textOf(state(72))).toContain('3 days old');
    expect(textOf(state(null))).toContain('has not been asked yet');
  });

  test('tells that it fails, how often and why, and that the last good answer stays in use', () => {
    expect(sourceNote(state(7, 3))).toMatchObject({
      code: 'source-failing',
      params: { failures: 3, ageHours: 7, ageDays: 0 },
    });
    expect(textOf(state(7, 3))).toBe(
      'The place’s source, weather.example, has failed 3 tries running. Its last good answer, 7 hours old, stays in use. The source answered with status 503: it is in trouble itself.',
    );
    expect(textOf(state(0, 9))).toContain('less than an hour old');
    expect(textOf(state(null, 1))).toContain('never answered well, in one try. The source answered');
  });
});
