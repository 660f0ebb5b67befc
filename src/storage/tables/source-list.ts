import type { PlainDate } from '../../basics/calendar.js';
import type { DaysGiven, PlaceSource } from '../../garden/store/store.js';
import type { Query } from '../database.js';

export interface SourceRow {
  readonly n: number;
  readonly preset: string | null;
  readonly format: string | null;
  readonly url: string | null;
  readonly every_hours: number;
  readonly asked_url: string | null;
  readonly etag: string | null;
  readonly last_modified: string | null;
  readonly fetched_at_ms: number | null;
  readonly tried_at_ms: number | null;
  readonly next_at_ms: number;
  readonly not_before_ms: number | null;
  readonly failures: number;
  readonly last_error: string | null;
  readonly days_from: string | null;
  readonly days_to: string | null;
  readonly days_count: number | null;
  readonly lease: number | null;
  readonly leased_until_ms: number | null;
}

/** What a source keeps while it moves in its place's list. */
const STATE = `asked_url, etag, last_modified, fetched_at_ms, tried_at_ms, next_at_ms, not_before_ms, failures, last_error,
  days_from, days_to, days_count, lease, leased_until_ms`;
export const SOURCE_COLUMNS = `n, preset, format, url, every_hours, ${STATE}`;

/** Replaces a place's list of sources; one that was in it before keeps its state, unless all begin anew. */
export async function replaceSources(
  query: Query,
  owner: string,
  place: string,
  sources: readonly PlaceSource[],
  { isAnew }: { readonly isAnew: boolean },
): Promise<void> {
  const before = new Map((isAnew ? [] : await sourceRows(query, owner, place)).map((row) => [identityOf(row), row]));
  await query.run('delete from place_sources where owner = $1 and place = $2', [owner, place]);
  for (const [n, { preset, format, url, everyHours }] of sources.entries()) {
    const row = before.get(identityOf({ preset, format, url }));
    const state = STATE.split(',').map((name) => name.trim() as keyof SourceRow);
    const values = row
      ? state.map((name) => row[name])
      : state.map((name) => (name === 'next_at_ms' || name === 'failures' ? 0 : null));
    await query.run(
      `insert into place_sources (owner, place, ${SOURCE_COLUMNS})
       values (${Array.from({ length: 7 + state.length }, (_, i) => `$${i + 1}`).join(', ')})`,
      [owner, place, n, preset, format, url, everyHours, ...values],
    );
  }
}

export const sourceRows = (ask: Pick<Query, 'all'>, owner: string, place: string): Promise<SourceRow[]> =>
  ask.all<SourceRow>(`select ${SOURCE_COLUMNS} from place_sources where owner = $1 and place = $2 order by n`, [
    owner,
    place,
  ]);

const identityOf = ({ preset, format, url }: Pick<SourceRow, 'preset' | 'format' | 'url'>): string =>
  JSON.stringify([preset, format, url]);

export const sourceOf = ({ preset, format, url, every_hours: everyHours }: SourceRow): PlaceSource => ({
  preset,
  format,
  url,
  everyHours,
});

export const daysOf = ({ days_from: from, days_to: to, days_count: count }: SourceRow): DaysGiven | null =>
  from !== null && to !== null && count !== null ? { from: from as PlainDate, to: to as PlainDate, count } : null;
