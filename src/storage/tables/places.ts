import { zoneNamed } from '../../basics/calendar.js';
import type { Quotas } from '../../garden/store/quotas.js';
import { type IfRevision, isAtRevision } from '../../garden/store/resource.js';
import type { Page, Place, PlaceFields, PlaceSource, Put } from '../../garden/store/store.js';
import type { Database, Query } from '../database.js';
import { takeOwnerLock } from '../owner-lock.js';
import { sameFields } from '../same-fields.js';
import { addBytes, airDaysIn, BYTES_PER_AIR_DAY, BYTES_PER_READING, readingsIn, refuseOneMore } from './quotas.js';
import { rezoneBed } from './reading-days.js';
import { replaceSources } from './source-list.js';

interface PlaceRow {
  readonly id: string;
  readonly revision: number;
  readonly fields_revision: number;
  readonly name: string;
  readonly latitude: number;
  readonly longitude: number;
  readonly elevation_m: number | null;
  readonly time_zone: string;
  readonly annual_rain_mm: number | null;
  readonly last_frost_around: string | null;
  readonly first_frost_around: string | null;
  /** One row for each of its sources; null in the only row of a place without one. */
  readonly every_hours: number | null;
  readonly preset: string | null;
  readonly format: string | null;
  readonly url: string | null;
}

const COLUMNS =
  'id, revision, name, latitude, longitude, elevation_m, time_zone, annual_rain_mm, last_frost_around, first_frost_around';

/** Places that a clause selects, in the order of their ids, each with its sources in their order. */
const selectPlaces = (clause: string): string =>
  `select p.*, coalesce(p.fields_revision, p.revision) as fields_revision, s.every_hours, s.preset, s.format, s.url
   from (select ${COLUMNS}, owner, fields_revision from places ${clause}) p
   left join place_sources s on s.owner = p.owner and s.place = p.id order by p.id, s.n`;

/** The places of rows that `selectPlaces` selects. */
function placesOf(rows: readonly PlaceRow[]): Place[] {
  const byId = new Map<string, { row: PlaceRow; sources: PlaceSource[] }>();
  for (const row of rows) {
    const one = byId.get(row.id) ?? { row, sources: [] };
    byId.set(row.id, one);
    const { preset, format, url, every_hours: everyHours } = row;
    if (everyHours !== null) one.sources.push({ preset, format, url, everyHours });
  }
  return [...byId.values()].map(({ row, sources }) => placeOf(row, sources));
}

function placeOf(row: PlaceRow, sources: readonly PlaceSource[]): Place {
  return {
    id: row.id,
    revision: row.revision,
    fieldsRevision: row.fields_revision,
    name: row.name,
    latitude: row.latitude,
    longitude: row.longitude,
    elevationM: row.elevation_m,
    timeZone: row.time_zone,
    annualRainMm: row.annual_rain_mm,
    lastFrostAround: row.last_frost_around,
    firstFrostAround: row.first_frost_around,
    sources,
  };
}

export async function findPlace(ask: Pick<Query, 'all'>, owner: string, id: string): Promise<Place | undefined> {
  const rows = await ask.all<PlaceRow>(selectPlaces('where owner = $1 and id = $2'), [owner, id]);
  return placesOf(rows)[0];
}

export async function listPlaces(database: Database, owner: string, { after = '', limit }: Page): Promise<Place[]> {
  const page = selectPlaces('where owner = $1 and id > $2 order by id limit $3');
  return placesOf(await database.all<PlaceRow>(page, [owner, after, limit]));
}

export const putPlace = (
  database: Database,
  quotas: Quotas,
  owner: string,
  id: string,
  fields: PlaceFields,
  ifRevision?: IfRevision,
): Promise<Put<Place>> =>
  database.transaction(async (query) => {
    const revision = await takeOwnerLock(query, owner);
    const before = await findPlace(query, owner, id);
    if (!before) await refuseOneMore(query, quotas, 'places', owner);
    if (!isAtRevision(before?.fieldsRevision, ifRevision)) return { outcome: 'stale' };
    const kept: Place = { ...fields, id, revision, fieldsRevision: revision };
    if (before && sameFields({ ...before, ...fields }, before)) return { outcome: 'unchanged', kept: before };
    const { name, latitude, longitude, elevationM, timeZone, annualRainMm, sources } = fields;
    const { lastFrostAround, firstFrostAround } = fields;
    await query.run(
      `insert into places (owner, ${COLUMNS}, fields_revision)
       values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $3)
       on conflict (owner, id) do update set
         revision = excluded.revision, fields_revision = excluded.fields_revision, name = excluded.name, latitude = excluded.latitude,
         longitude = excluded.longitude, elevation_m = excluded.elevation_m, time_zone = excluded.time_zone,
         annual_rain_mm = excluded.annual_rain_mm, last_frost_around = excluded.last_frost_around,
         first_frost_around = excluded.first_frost_around`,
      [
        ...[owner, id, revision, name, latitude, longitude, elevationM, timeZone, annualRainMm],
        ...[lastFrostAround, firstFrostAround],
      ],
    );
    // What a source said of another spot is not known of this one.
    const hasMoved = before !== undefined && (before.latitude !== latitude || before.longitude !== longitude);
    if (hasMoved || !sameFields(before?.sources ?? [], sources)) {
      await replaceSources(query, owner, id, sources, { isAnew: hasMoved });
    }
    if (before && before.timeZone !== timeZone) await rezonePlace(query, owner, kept);
    return { outcome: before ? 'replaced' : 'created', kept };
  });

/** Sorts the readings of a place's beds into its new days and marks the beds as changed. */
async function rezonePlace(query: Query, owner: string, { id, timeZone, revision }: Place): Promise<void> {
  const of = [owner, id];
  const beds = await query.all<{ id: string }>('select id from beds where owner = $1 and place = $2 order by id', of);
  for (const bed of beds) await rezoneBed(query, owner, bed.id, zoneNamed(timeZone));
  await query.run('update beds set revision = $3 where owner = $1 and place = $2', [...of, revision]);
}

export const deletePlace = (
  database: Database,
  quotas: Quotas,
  owner: string,
  id: string,
  { withBeds = false, ifRevision }: { withBeds?: boolean; ifRevision?: IfRevision },
): Promise<'deleted' | 'absent' | 'has-beds' | 'stale'> =>
  database.transaction(async (query) => {
    await takeOwnerLock(query, owner);
    const before = await findPlace(query, owner, id);
    if (!before) return 'absent';
    const beds = await query.all('select id from beds where owner = $1 and place = $2 limit 1', [owner, id]);
    if (beds.length > 0 && !withBeds) return 'has-beds';
    if (!isAtRevision(before.fieldsRevision, ifRevision)) return 'stale';
    const inItsBeds = 'bed in (select id from beds where owner = $1 and place = $2)';
    const bytes =
      BYTES_PER_READING * (await readingsIn(query, inItsBeds, [owner, id])) +
      BYTES_PER_AIR_DAY * (await airDaysIn(query, owner, id));
    await query.run('delete from beds where owner = $1 and place = $2', [owner, id]);
    await query.run('delete from places where owner = $1 and id = $2', [owner, id]);
    await addBytes(query, quotas, owner, -bytes);
    return 'deleted';
  });

/**
 * Changes a series of a place and touches its revision unless nothing differed.
 *
 * @param change Makes the change, and returns its result and whether anything differed.
 * @returns That result; `stale`: the place is at another revision; undefined when there is no such place.
 */
export const changeOfPlace = <T>(
  database: Database,
  owner: string,
  place: string,
  change: (query: Query, revision: number) => Promise<{ result: T; different: boolean }>,
  ifRevision?: IfRevision,
): Promise<T | 'stale' | undefined> =>
  database.transaction(async (query) => {
    const revision = await takeOwnerLock(query, owner);
    const of = [owner, place];
    const found = await query.all<{ revision: number }>('select revision from places where owner = $1 and id = $2', of);
    if (!found[0]) return undefined;
    if (!isAtRevision(found[0].revision, ifRevision)) return 'stale';
    const { result, different } = await change(query, revision);
    if (different) await query.run('update places set revision = $3 where owner = $1 and id = $2', [...of, revision]);
    return result;
  });
