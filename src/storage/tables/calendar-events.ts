import type { CalendarEntry, CalendarRevision } from '../../garden/store/season-store.js';
import type { Database, Query } from '../database.js';
import { insertMany } from '../insert-many.js';
import { takeOwnerLock } from '../owner-lock.js';

interface Event extends CalendarEntry, CalendarRevision {}

interface EventRow extends CalendarEntry {
  readonly sequence: number;
  readonly changed_at_ms: number;
}

/** Lifetime of an event's revision [ms]; no calendar client relies on an older one. */
const EVENT_LIFETIME_MS = 3 * 365 * 24 * 3_600_000;

/**
 * Revisions of a calendar's events. Feeds are read often and change seldom, so an unchanged one takes no owner lock.
 */
export async function calendarRevisions(
  database: Database,
  owner: string,
  bed: string,
  entries: readonly CalendarEntry[],
  nowMs: number,
): Promise<CalendarRevision[] | undefined> {
  const wanted = new Map(entries.map(({ uid, digest }) => [uid, digest]));
  const isUnchanged = (known: Map<string, Event>) =>
    entries.every(({ uid }) => known.get(uid)?.digest === wanted.get(uid));
  const revisionsIn = (known: Map<string, Event>) =>
    entries.map(({ uid }): CalendarRevision => {
      const { sequence, changedAtMs } = known.get(uid)!;
      return { uid, sequence, changedAtMs };
    });

  const before = await eventsOf(database, owner, bed);
  if (!before || isUnchanged(before)) return before && revisionsIn(before);
  return database.transaction(async (query) => {
    await takeOwnerLock(query, owner);
    const known = await eventsOf(query, owner, bed);
    if (!known) return undefined;
    const changed = [...wanted]
      .filter(([uid, digest]) => known.get(uid)?.digest !== digest)
      .map(([uid, digest]): Event => {
        const last = known.get(uid);
        return { uid, digest, sequence: last ? last.sequence + 1 : 0, changedAtMs: nowMs };
      });
    await insertMany(
      query,
      'calendar_events (owner, bed, uid, digest, sequence, changed_at_ms)',
      changed.map(({ uid, digest, sequence, changedAtMs }) => [owner, bed, uid, digest, sequence, changedAtMs]),
      `on conflict (owner, bed, uid) do update set
         digest = excluded.digest, sequence = excluded.sequence, changed_at_ms = excluded.changed_at_ms`,
    );
    await query.run('delete from calendar_events where owner = $1 and bed = $2 and changed_at_ms < $3', [
      owner,
      bed,
      nowMs - EVENT_LIFETIME_MS,
    ]);
    for (const event of changed) known.set(event.uid, event);
    return revisionsIn(known);
  });
}

/** The stored events of a bed's calendar, by uid; undefined when there is no such bed. */
async function eventsOf(ask: Pick<Query, 'all'>, owner: string, bed: string): Promise<Map<string, Event> | undefined> {
  const rows = await ask.all<EventRow | { uid: null }>(
    `select e.uid, e.digest, e.sequence, e.changed_at_ms
     from beds b left join calendar_events e on e.owner = b.owner and e.bed = b.id
     where b.owner = $1 and b.id = $2`,
    [owner, bed],
  );
  if (rows.length === 0) return undefined;
  const said = rows.filter((row): row is EventRow => row.uid !== null);
  return new Map(
    said.map(({ uid, digest, sequence, changed_at_ms }) => [
      uid,
      { uid, digest, sequence, changedAtMs: changed_at_ms },
    ]),
  );
}
