import type { FetchEnd, SourceLease, SourceRef, SourceState } from '../../garden/store/store.js';
import type { Database, Query } from '../database.js';
import { takeOwnerLock } from '../owner-lock.js';
import { findPlace } from './places.js';

interface SourceRow {
  readonly asked_url: string | null;
  readonly etag: string | null;
  readonly last_modified: string | null;
  readonly fetched_at_ms: number | null;
  readonly tried_at_ms: number | null;
  readonly next_at_ms: number;
  readonly failures: number;
  readonly last_error: string | null;
  readonly lease: number | null;
  readonly leased_until_ms: number | null;
}

/** Ignores the state of a source with another format or url than the place has now. */
const OF_PLACE = `from places p
  left join sources s on s.owner = p.owner and s.place = p.id and s.format = p.source_format and s.url = p.source_url
  where p.source_url is not null`;

/** A place whose interval was shortened need not wait for the longer one. */
const IS_DUE = `(s.owner is null or (
    (s.next_at_ms <= $1 or (s.failures = 0 and s.fetched_at_ms + p.source_every_hours * 3600000 <= $1))
    and (s.leased_until_ms is null or s.leased_until_ms <= $1)))`;

const STATE = `s.asked_url, s.etag, s.last_modified, s.fetched_at_ms, s.tried_at_ms, coalesce(s.next_at_ms, 0) as next_at_ms,
  coalesce(s.failures, 0) as failures, s.last_error, s.lease, s.leased_until_ms`;

export const dueSources = (database: Database, nowMs: number, limit: number): Promise<SourceRef[]> =>
  database.all<SourceRef>(
    `select p.owner as owner, p.id as place, s.next_at_ms as "dueSinceMs" ${OF_PLACE} and ${IS_DUE}
     order by coalesce(s.next_at_ms, 0), p.owner, p.id limit $2`,
    [nowMs, limit],
  );

export const leaseSource = (
  database: Database,
  owner: string,
  id: string,
  nowMs: number,
  untilMs: number,
): Promise<SourceLease | undefined> =>
  database.transaction(async (query) => {
    const lease = await takeOwnerLock(query, owner);
    const [row] = await query.all<SourceRow>(
      `select ${STATE} ${OF_PLACE} and ${IS_DUE} and p.owner = $2 and p.id = $3`,
      [nowMs, owner, id],
    );
    const place = await findPlace(query, owner, id);
    if (!row || !place?.source) return undefined;
    const { format, url } = place.source;
    const isNew = row.tried_at_ms === null;
    if (isNew) await query.run('delete from sources where owner = $1 and place = $2', [owner, id]);
    await query.run(
      `insert into sources (owner, place, format, url, next_at_ms, failures, lease, leased_until_ms, tried_at_ms)
       values ($1, $2, $3, $4, 0, 0, $5, $6, $7)
       on conflict (owner, place) do update set
         lease = excluded.lease, leased_until_ms = excluded.leased_until_ms, tried_at_ms = excluded.tried_at_ms`,
      [owner, id, format, url, lease, untilMs, nowMs],
    );
    return {
      lease,
      place: { ...place, source: place.source },
      askedUrl: row.asked_url,
      etag: row.etag,
      lastModified: row.last_modified,
      fetchedAtMs: row.fetched_at_ms,
      failures: row.failures,
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
      return query.run(`update sources set ${freed} ${where}`, of);
    case 'failed':
      return query.run(
        `update sources set ${freed}, next_at_ms = $4, failures = failures + 1, last_error = $5 ${where}`,
        [...of, end.nextAtMs, end.error],
      );
    case 'fetched':
      return query.run(
        `update sources set ${freed}, next_at_ms = $4, failures = 0, last_error = null, fetched_at_ms = $5,
           asked_url = $6, etag = $7, last_modified = $8 ${where}`,
        [...of, end.nextAtMs, end.atMs, end.askedUrl, end.etag, end.lastModified],
      );
  }
}

export async function findSourceState(
  database: Database,
  owner: string,
  place: string,
): Promise<SourceState | undefined> {
  const [row] = await database.all<SourceRow & { every_hours: number }>(
    `select p.source_every_hours as every_hours, ${STATE} ${OF_PLACE} and p.owner = $1 and p.id = $2`,
    [owner, place],
  );
  if (!row) return undefined;
  return {
    everyHours: row.every_hours,
    fetchedAtMs: row.fetched_at_ms,
    triedAtMs: row.tried_at_ms,
    nextAtMs: row.next_at_ms,
    failures: row.failures,
    lastError: row.last_error,
  };
}
