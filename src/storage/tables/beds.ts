import { randomBytes } from 'node:crypto';
import { zoneNamed } from '../../basics/calendar.js';
import type { Quotas } from '../../garden/store/quotas.js';
import { type IfRevision, isAtRevision } from '../../garden/store/resource.js';
import type { Bed, BedFields, Changes, InstantRange, Page, Probe, Put } from '../../garden/store/store.js';
import type { Readings } from '../../readings/readings.js';
import type { Database, Query } from '../database.js';
import { takeOwnerLock } from '../owner-lock.js';
import { sameFields } from '../same-fields.js';
import type { Secrets } from '../secrets/secrets.js';
import { findPlace } from './places.js';
import { addBytes, BYTES_PER_READING, readingsIn, refuseOneMore, refuseThermometer } from './quotas.js';
import { deleteFromSeries, hasSeries, putInSeries, rezoneBed, seriesOf } from './reading-days.js';

interface BedRow extends Pick<Bed, 'id' | 'revision' | 'place' | 'name' | 'kind' | 'cover' | 'moisture'> {
  readonly fields_revision: number;
  readonly shade_percent: number;
  readonly room_c: number | null;
  readonly calendar_token: string | null;
}

const COLUMNS = 'id, revision, place, name, kind, cover, moisture, shade_percent, room_c, calendar_token';
const SELECT = `select ${COLUMNS}, coalesce(fields_revision, revision) as fields_revision from beds`;

const bedOf = ({ fields_revision, shade_percent, room_c, calendar_token, ...row }: BedRow): Bed => ({
  ...row,
  fieldsRevision: fields_revision,
  shadePercent: shade_percent,
  roomC: room_c,
  calendarToken: calendar_token,
});

export async function findBed(ask: Pick<Query, 'all'>, owner: string, id: string): Promise<Bed | undefined> {
  const rows = await ask.all<BedRow>(`${SELECT} where owner = $1 and id = $2`, [owner, id]);
  return rows[0] && bedOf(rows[0]);
}

export async function listBeds(database: Database, owner: string, { after = '', limit }: Page): Promise<Bed[]> {
  const rows = await database.all<BedRow>(`${SELECT} where owner = $1 and id > $2 order by id limit $3`, [
    owner,
    after,
    limit,
  ]);
  return rows.map(bedOf);
}

export const putBed = (
  database: Database,
  quotas: Quotas,
  secrets: Secrets,
  owner: string,
  id: string,
  fields: BedFields,
  ifRevision?: IfRevision,
): Promise<Put<Bed>> =>
  database.transaction(async (query) => {
    const revision = await takeOwnerLock(query, owner);
    const before = await findBed(query, owner, id);
    const place = await findPlace(query, owner, fields.place);
    if (!place) return { outcome: 'no-place' };
    if (!before) await refuseOneMore(query, quotas, 'beds', owner);
    if (!isAtRevision(before?.fieldsRevision, ifRevision)) return { outcome: 'stale' };
    if (before && sameFields({ ...before, ...fields }, before)) return { outcome: 'unchanged', kept: before };
    const token = before?.calendarToken ? null : newToken(secrets, owner, id);
    const calendarToken = before?.calendarToken ?? token!.sealed;
    const kept: Bed = { ...fields, id, revision, fieldsRevision: revision, calendarToken };
    const { name, kind, cover, moisture, shadePercent, roomC } = fields;
    await query.run(
      `insert into beds (owner, ${COLUMNS}, fields_revision, calendar_digest)
       values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $3, $12)
       on conflict (owner, id) do update set
         revision = excluded.revision, fields_revision = excluded.fields_revision, place = excluded.place, name = excluded.name, kind = excluded.kind,
         cover = excluded.cover, moisture = excluded.moisture, shade_percent = excluded.shade_percent,
         room_c = excluded.room_c, calendar_token = excluded.calendar_token,
         calendar_digest = coalesce(excluded.calendar_digest, beds.calendar_digest)`,
      [owner, id, revision, fields.place, name, kind, cover, moisture, shadePercent, roomC, calendarToken].concat([
        token?.digest ?? null,
      ]),
    );
    if (before && before.place !== place.id) {
      const left = await findPlace(query, owner, before.place);
      if (left?.timeZone !== place.timeZone) await rezoneBed(query, owner, id, zoneNamed(place.timeZone));
    }
    return { outcome: before ? 'replaced' : 'created', kept };
  });

export const deleteBed = (
  database: Database,
  quotas: Quotas,
  owner: string,
  id: string,
  { withSowings = false, ifRevision }: { withSowings?: boolean; ifRevision?: IfRevision },
): Promise<'deleted' | 'absent' | 'has-sowings' | 'stale'> =>
  database.transaction(async (query) => {
    await takeOwnerLock(query, owner);
    const of = [owner, id];
    const before = await findBed(query, owner, id);
    if (!before) return 'absent';
    const sowings = await query.all('select id from sowings where owner = $1 and bed = $2 limit 1', of);
    if (sowings.length > 0 && !withSowings) return 'has-sowings';
    if (!isAtRevision(before.fieldsRevision, ifRevision)) return 'stale';
    const readings = await readingsIn(query, 'bed = $2', [owner, id]);
    await query.run('delete from beds where owner = $1 and id = $2', of);
    await addBytes(query, quotas, owner, -BYTES_PER_READING * readings);
    return 'deleted';
  });

/**
 * Marks a bed as changed. Whatever was made from a bed and what lies in it stays valid while the bed's revision does.
 */
export const touchBedRevision = (query: Query, owner: string, id: string, revision: number): Promise<number> =>
  query.run('update beds set revision = $3 where owner = $1 and id = $2', [owner, id, revision]);

export async function bedOfCalendar(
  database: Database,
  secrets: Secrets,
  bed: string,
  token: string,
): Promise<{ readonly owner: string } | undefined> {
  const rows = await database.all<{ owner: string }>('select owner from beds where calendar_digest = $2 and id = $1', [
    bed,
    secrets.digest(token),
  ]);
  return rows[0];
}

export const renewCalendarToken = (
  database: Database,
  secrets: Secrets,
  owner: string,
  id: string,
): Promise<string | undefined> =>
  database.transaction(async (query) => {
    const revision = await takeOwnerLock(query, owner);
    const { token, sealed, digest } = newToken(secrets, owner, id);
    const changed = await query.run(
      'update beds set calendar_token = $3, calendar_digest = $4, revision = $5 where owner = $1 and id = $2',
      [owner, id, sealed, digest, revision],
    );
    return changed > 0 ? token : undefined;
  });

/** An unguessable token of 256 random bits. */
function newToken(secrets: Secrets, owner: string, bed: string) {
  const token = randomBytes(32).toString('base64url');
  return { token, sealed: secrets.seal(token, ['calendar', owner, bed]), digest: secrets.digest(token) };
}

export const putReadings = (
  database: Database,
  quotas: Quotas,
  owner: string,
  bed: string,
  probe: Probe,
  readings: Readings,
  ifRevision?: IfRevision,
): Promise<Changes | 'stale' | undefined> => {
  refuseDisorder(readings);
  return changeOfBed(
    database,
    owner,
    bed,
    async (query, timeZone) => {
      const key = { owner, bed, ...probe };
      if (!(await hasSeries(query, key))) await refuseThermometer(query, quotas, owner, bed);
      const changes = await putInSeries(query, key, zoneNamed(timeZone), readings);
      await addBytes(query, quotas, owner, BYTES_PER_READING * changes.added);
      return { result: changes, different: changes.added + changes.replaced > 0 };
    },
    ifRevision,
  );
};

export const deleteReadings = (
  database: Database,
  quotas: Quotas,
  owner: string,
  bed: string,
  range: InstantRange,
  probes?: readonly Probe[],
  ifRevision?: IfRevision,
): Promise<number | 'stale' | undefined> =>
  changeOfBed(
    database,
    owner,
    bed,
    async (query, timeZone) => {
      let deleted = 0;
      for (const { medium, probeDepthCm } of probes ?? (await seriesOf(query, owner, bed))) {
        deleted += await deleteFromSeries(query, { owner, bed, medium, probeDepthCm }, zoneNamed(timeZone), range);
      }
      await addBytes(query, quotas, owner, -BYTES_PER_READING * deleted);
      return { result: deleted, different: deleted > 0 };
    },
    ifRevision,
  );

/** Changes a series of a bed and touches its revision unless nothing differed; undefined when there is no such bed. */
const changeOfBed = <T>(
  database: Database,
  owner: string,
  bed: string,
  change: (query: Query, timeZone: string) => Promise<{ result: T; different: boolean }>,
  ifRevision?: IfRevision,
): Promise<T | 'stale' | undefined> =>
  database.transaction(async (query) => {
    const revision = await takeOwnerLock(query, owner);
    const found = await query.all<{ revision: number; time_zone: string }>(
      `select beds.revision, places.time_zone from beds join places on places.owner = beds.owner and places.id = beds.place
       where beds.owner = $1 and beds.id = $2`,
      [owner, bed],
    );
    if (!found[0]) return undefined;
    if (!isAtRevision(found[0].revision, ifRevision)) return 'stale';
    const { result, different } = await change(query, found[0].time_zone);
    if (different) await touchBedRevision(query, owner, bed, revision);
    return result;
  });

/** Readings packed out of order could not be found again. */
function refuseDisorder({ atMs, valueC }: Readings): void {
  for (let i = 0; i < atMs.length; i++) {
    const rising = i === 0 || atMs[i]! > atMs[i - 1]!;
    if (!rising || !Number.isFinite(atMs[i]) || !Number.isFinite(valueC[i])) {
      throw new Error(`readings to keep must be finite and in time order; number ${i} is not`);
    }
  }
}
