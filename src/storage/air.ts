import type { PlainDate } from '../basics/calendar.js';
import type { Normals } from '../climate/normals.js';
import type { Quotas } from '../garden/quotas.js';
import type { AirDay, Changes, ComingDays, DateRange, IfRevision } from '../garden/store.js';
import type { Database } from './database.js';
import { insertMany } from './insert-many.js';
import { changeOfPlace } from './places.js';
import { addBytes, BYTES_PER_AIR_DAY } from './quotas.js';

interface AirRow {
  readonly date: PlainDate;
  readonly min_c: number | null;
  readonly mean_c: number | null;
  readonly max_c: number | null;
}

const FIRST = '' as PlainDate;
const LAST = '9999-99-99' as PlainDate;
const IN_RANGE = 'owner = $1 and place = $2 and date >= $3 and date <= $4';

const dayOf = ({ date, min_c, mean_c, max_c }: AirRow): AirDay => ({ date, min: min_c, mean: mean_c, max: max_c });

const isSame = (a: AirDay, b: AirDay): boolean => a.min === b.min && a.mean === b.mean && a.max === b.max;

/** Of a date given twice the last day counts. */
const oneADate = (days: readonly AirDay[]): AirDay[] => [...new Map(days.map((day) => [day.date, day])).values()];

export const putAir = (
  database: Database,
  quotas: Quotas,
  owner: string,
  place: string,
  days: readonly AirDay[],
  ifRevision?: IfRevision,
): Promise<Changes | 'stale' | undefined> =>
  changeOfPlace(
    database,
    owner,
    place,
    async (query) => {
      const coming = oneADate(days);
      const dates = coming.map(({ date }) => date).sort();
      const rows = await query.all<AirRow>(`select date, min_c, mean_c, max_c from air_days where ${IN_RANGE}`, [
        owner,
        place,
        dates[0] ?? FIRST,
        dates.at(-1) ?? FIRST,
      ]);
      const before = new Map(rows.map((row) => [row.date, dayOf(row)]));
      const added = coming.filter(({ date }) => !before.has(date));
      const replaced = coming.filter((day) => before.has(day.date) && !isSame(before.get(day.date)!, day));
      await insertMany(
        query,
        'air_days (owner, place, date, min_c, mean_c, max_c)',
        [...added, ...replaced].map(({ date, min, mean, max }) => [owner, place, date, min, mean, max]),
        `on conflict (owner, place, date) do update set
         min_c = excluded.min_c, mean_c = excluded.mean_c, max_c = excluded.max_c`,
      );
      await addBytes(query, quotas, owner, BYTES_PER_AIR_DAY * added.length);
      const unchanged = coming.length - added.length - replaced.length;
      return {
        result: { added: added.length, unchanged, replaced: replaced.length },
        different: unchanged < coming.length,
      };
    },
    ifRevision,
  );

export async function listAir(database: Database, owner: string, place: string, range: DateRange): Promise<AirDay[]> {
  const rows = await database.all<AirRow>(
    `select date, min_c, mean_c, max_c from air_days where ${IN_RANGE} order by date`,
    [owner, place, range.from ?? FIRST, range.to ?? LAST],
  );
  return rows.map(dayOf);
}

export const deleteAir = (
  database: Database,
  quotas: Quotas,
  owner: string,
  place: string,
  { from = FIRST, to = LAST }: DateRange,
  ifRevision?: IfRevision,
): Promise<number | 'stale' | undefined> =>
  changeOfPlace(
    database,
    owner,
    place,
    async (query) => {
      const deleted = await query.run(`delete from air_days where ${IN_RANGE}`, [owner, place, from, to]);
      await addBytes(query, quotas, owner, -BYTES_PER_AIR_DAY * deleted);
      return { result: deleted, different: deleted > 0 };
    },
    ifRevision,
  );

export const putNormals = (
  database: Database,
  owner: string,
  place: string,
  { meanMaxC, meanMinC }: Normals,
  ifRevision?: IfRevision,
): Promise<{ readonly revision: number } | 'stale' | undefined> =>
  changeOfPlace(
    database,
    owner,
    place,
    async (query, revision) => {
      await query.run('delete from normals where owner = $1 and place = $2', [owner, place]);
      const months = meanMaxC.map((maxC, i) => [owner, place, i + 1, maxC, meanMinC[i]!]);
      await insertMany(query, 'normals (owner, place, month, mean_max_c, mean_min_c)', months);
      return { result: { revision }, different: true };
    },
    ifRevision,
  );

export async function findNormals(database: Database, owner: string, place: string): Promise<Normals | undefined> {
  const rows = await database.all<{ mean_max_c: number; mean_min_c: number }>(
    'select mean_max_c, mean_min_c from normals where owner = $1 and place = $2 order by month',
    [owner, place],
  );
  if (rows.length === 0) return undefined;
  return { meanMaxC: rows.map((row) => row.mean_max_c), meanMinC: rows.map((row) => row.mean_min_c) };
}

export const putComingDays = (
  database: Database,
  owner: string,
  place: string,
  { atMs, days }: ComingDays,
  ifRevision?: IfRevision,
): Promise<{ readonly revision: number } | 'stale' | undefined> =>
  changeOfPlace(
    database,
    owner,
    place,
    async (query, revision) => {
      await query.run('delete from coming_days where owner = $1 and place = $2', [owner, place]);
      await insertMany(
        query,
        'coming_days (owner, place, date, at_ms, min_c, mean_c, max_c)',
        oneADate(days).map(({ date, min, mean, max }) => [owner, place, date, atMs, min, mean, max]),
      );
      return { result: { revision }, different: true };
    },
    ifRevision,
  );

export async function findComingDays(
  database: Database,
  owner: string,
  place: string,
): Promise<ComingDays | undefined> {
  const rows = await database.all<AirRow & { at_ms: number }>(
    'select date, at_ms, min_c, mean_c, max_c from coming_days where owner = $1 and place = $2 order by date',
    [owner, place],
  );
  return rows[0] && { atMs: rows[0].at_ms, days: rows.map(dayOf) };
}
