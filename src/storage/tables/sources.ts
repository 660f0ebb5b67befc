import type { FetchEnd, SourceLease, SourceRef, SourceState } from '../../garden/store/store.js';
import type { Database, Query } from '../database.js';
import { takeOwnerLock } from '../owner-lock.js';
import { findPlace } from './places.js';
import { daysOf, SOURCE_COLUMNS, type SourceRow, sourceOf, sourceRows } from './source-list.js';

/** A source whose interval was shortened need not wait for the longer one. */
const IS_DUE = `(next_at_ms <= $1 or (failures = 0 and fetched_at_ms + every_hours * 3600000 <= $1))
  and (not_before_ms is null or not_before_ms <= $1) and (leased_until_ms is null or leased_until_ms <= $1)`;

export const dueSources = (
  database: Database,
  nowMs: number,
  limit: number,
  { presetsOnly = false }: { readonly presetsOnly?: boolean } = {},
): Promise<SourceRef[]> =>
  database.all<SourceRef>(
    `select owner, place, n, case when tried_at_ms is null then null else next_at_ms end as "dueSinceMs"
     from place_sources where ${IS_DUE} ${presetsOnly ? 'and preset is not null' : ''}
     order by next_at_ms, owner, place, n limit $2`,
    [nowMs, limit],
  );

export const leaseSource = (
  database: Database,
  owner: string,
  id: string,
  n: number,
  nowMs: number,
  untilMs: number,
): Promise<SourceLease | undefined> =>
  database.transaction(async (query) => {
    const lease = await takeOwnerLock(query, owner);
    const [row] = await query.all<SourceRow>(
      `select ${SOURCE_COLUMNS} from place_sources where ${IS_DUE} and owner = $2 and place = $3 and n = $4`,
      [nowMs, owner, id, n],
    );
    const place = await findPlace(query, owner, id);
    if (!row || !place) return undefined;
    await query.run(
      `update place_sources set lease = $4, leased_until_ms = $5, tried_at_ms = $6
       where owner = $1 and place = $2 and n = $3`,
      [owner, id, n, lease, untilMs, nowMs],
    );
    return {
      lease,
      place,
      source: sourceOf(row),
      askedUrl: row.asked_url,
      etag: row.etag,
      lastModified: row.last_modified,
      fetchedAtMs: row.fetched_at_ms,
      failures: row.failures,
      days: daysOf(row),
    };
  });

export const endLease = (
  database: Database,
  owner: string,
  place: string,
  lease: number,
  end: FetchEnd,
): Promise<boolean> =>
  database.transaction(async (query) => {
    await takeOwnerLock(query, owner);
    return (await write(query, [owner, place, lease], end)) > 0;
  });

function write(query: Query, of: readonly [string, string, number], end: FetchEnd): Promise<number> {
  const where = 'where owner = $1 and place = $2 and lease = $3';
  const freed = 'lease = null, leased_until_ms = null';
  switch (end.outcome) {
    case 'given-up':
      return query.run(`update place_sources set ${freed} ${where}`, of);
    case 'put-off':
      return query.run(`update place_sources set ${freed}, next_at_ms = $4, not_before_ms = $4 ${where}`, [
        ...of,
        end.nextAtMs,
      ]);
    case 'failed':
      return query.run(
        `update place_sources set ${freed}, next_at_ms = $4, not_before_ms = $5, failures = failures + 1,
           last_error = $6 ${where}`,
        [...of, end.nextAtMs, end.notBeforeMs, end.error],
      );
    case 'fetched':
      return query.run(
        `update place_sources set ${freed}, next_at_ms = $4, not_before_ms = $5, failures = 0, last_error = null,
           fetched_at_ms = $6, asked_url = $7, etag = $8, last_modified = $9, days_from = $10, days_to = $11,
           days_count = $12 ${where}`,
        [...of, end.nextAtMs, end.notBeforeMs, end.atMs, end.askedUrl, end.etag, end.lastModified].concat([
          end.days?.from ?? null,
          end.days?.to ?? null,
          end.days?.count ?? null,
        ]),
      );
  }
}

export async function findSourceStates(database: Database, owner: string, place: string): Promise<SourceState[]> {
  const rows = await sourceRows(database, owner, place);
  return rows.map((row) => ({
    source: sourceOf(row),
    fetchedAtMs: row.fetched_at_ms,
    triedAtMs: row.tried_at_ms,
    nextAtMs: row.next_at_ms,
    notBeforeMs: row.not_before_ms,
    failures: row.failures,
    lastError: row.last_error,
    days: daysOf(row),
  }));
}

export async function hurrySources(
  database: Database,
  owner: string,
  place: string,
  nowMs: number,
  triedBeforeMs: number,
): Promise<void> {
  await database.transaction(async (query) => {
    await takeOwnerLock(query, owner);
    await query.run(
      `update place_sources set next_at_ms = $3 where owner = $1 and place = $2 and next_at_ms > $3
         and (tried_at_ms is null or tried_at_ms <= $4) and (not_before_ms is null or not_before_ms <= $3)`,
      [owner, place, nowMs, triedBeforeMs],
    );
  });
}
