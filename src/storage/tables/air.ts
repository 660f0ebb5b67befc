import { FIRST_YEAR, LAST_YEAR, type PlainDate } from '../../basics/calendar.js';
import type { Normals } from '../../climate/normals.js';
import type { Quotas } from '../../garden/store/quotas.js';
import type { AirDay, Changes, ComingDays, DateRange, IfRevision } from '../../garden/store/store.js';
import type { Database, Query } from '../database.js';
import { insertMany } from '../insert-many.js';
import { type AirYear, dayIndex, daysInYear, packAirYear, unpackAirYear, yearOf } from '../pack-air.js';
import { changeOfPlace } from './places.js';
import { addBytes, BYTES_PER_AIR_DAY } from './quotas.js';

interface AirRow {
  readonly date: PlainDate;
  readonly min_c: number | null;
  readonly mean_c: number | null;
  readonly max_c: number | null;
}

const dayOf = ({ date, min_c, mean_c, max_c }: AirRow): AirDay => ({ date, min: min_c, mean: mean_c, max: max_c });

const isSame = (a: AirDay, b: AirDay): boolean => a.min === b.min && a.mean === b.mean && a.max === b.max;

/** Keeps the last of several days with one date. */
const oneADate = (days: readonly AirDay[]): AirDay[] => [...new Map(days.map((day) => [day.date, day])).values()];

/** All days of the years that a range touches, by year. */
async function yearsIn(
  { all }: Pick<Query, 'all'>,
  owner: string,
  place: string,
  { from, to }: DateRange,
): Promise<Map<number, AirYear>> {
  const rows = await all<{ year: number; packed: Uint8Array | ArrayBuffer }>(
    'select year, packed from air_years where owner = $1 and place = $2 and year >= $3 and year <= $4 order by year',
    [owner, place, from ? yearOf(from) : FIRST_YEAR, to ? yearOf(to) : LAST_YEAR],
  );
  return new Map(rows.map(({ year, packed }) => [year, unpackAirYear(year, packed)]));
}

const keepYear = (query: Query, owner: string, place: string, year: number, days: AirYear): Promise<number> =>
  query.run(
    `insert into air_years (owner, place, year, packed) values ($1, $2, $3, $4)
     on conflict (owner, place, year) do update set packed = excluded.packed`,
    [owner, place, year, packAirYear(days)],
  );

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
      const range = { from: dates[0], to: dates.at(-1) };
      const years = coming.length > 0 ? await yearsIn(query, owner, place, range) : new Map<number, AirYear>();
      const changed = new Set<number>();
      const result = { added: 0, unchanged: 0, replaced: 0 };
      for (const day of coming) {
        const number = yearOf(day.date);
        const year = years.get(number) ?? [];
        years.set(number, year);
        const i = dayIndex(day.date);
        const before = year[i];
        if (before && isSame(before, day)) {
          result.unchanged++;
          continue;
        }
        result[before ? 'replaced' : 'added']++;
        year[i] = day;
        changed.add(number);
      }
      for (const year of changed) await keepYear(query, owner, place, year, years.get(year)!);
      await addBytes(query, quotas, owner, BYTES_PER_AIR_DAY * result.added);
      return { result, different: changed.size > 0 };
    },
    ifRevision,
  );

export async function listAir(database: Database, owner: string, place: string, range: DateRange): Promise<AirDay[]> {
  const years = await yearsIn(database, owner, place, range);
  const days: AirDay[] = [];
  for (const year of years.values()) {
    for (const day of year) if (day && isWithin(day.date, range)) days.push(day);
  }
  return days;
}

export const deleteAir = (
  database: Database,
  quotas: Quotas,
  owner: string,
  place: string,
  range: DateRange,
  ifRevision?: IfRevision,
): Promise<number | 'stale' | undefined> =>
  changeOfPlace(
    database,
    owner,
    place,
    async (query) => {
      let deleted = 0;
      for (const [number, year] of await yearsIn(query, owner, place, range)) {
        const left = year.map((day) => (day && isWithin(day.date, range) ? undefined : day));
        const before = deleted;
        deleted += daysInYear(year) - daysInYear(left);
        if (deleted === before) continue;
        if (daysInYear(left) > 0) await keepYear(query, owner, place, number, left);
        else {
          await query.run('delete from air_years where owner = $1 and place = $2 and year = $3', [
            owner,
            place,
            number,
          ]);
        }
      }
      await addBytes(query, quotas, owner, -BYTES_PER_AIR_DAY * deleted);
      return { result: deleted, different: deleted > 0 };
    },
    ifRevision,
  );

const isWithin = (date: PlainDate, { from, to }: DateRange): boolean =>
  (from === undefined || date >= from) && (to === undefined || date <= to);

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
