import type { PlainDate } from '../../basics/calendar.js';
import { type IfRevision, isAtRevision } from '../../garden/store/resource.js';
import type {
  Count,
  CountedSowing,
  CountPut,
  KeptCount,
  Sowing,
  SowingFields,
} from '../../garden/store/season-store.js';
import type { Database, Query } from '../database.js';
import { type DocumentRow, type DocumentTable, findDocument, resourceOf } from '../document-table.js';
import { takeOwnerLock } from '../owner-lock.js';
import { sameFields } from '../same-fields.js';
import { touchBedRevision } from './beds.js';

export const sowings: DocumentTable<SowingFields> = { name: 'sowings', columns: ['bed', 'lot', 'date'] };

/** A count without its date, which has a column of its own. */
interface CountRow {
  readonly sowing: string;
  readonly date: PlainDate;
  readonly revision: number | null;
  readonly fields: string;
}

const countOf = ({ date, revision, fields }: CountRow): KeptCount => ({
  date,
  ...(JSON.parse(fields) as Omit<Count, 'date'>),
  revision: revision ?? 0,
});

export async function findSowing(database: Database, owner: string, id: string): Promise<CountedSowing | undefined> {
  const sowing = await findDocument(database, sowings, owner, id);
  if (!sowing) return undefined;
  const rows = await database.all<CountRow>(
    'select sowing, date, revision, fields from counts where owner = $1 and sowing = $2 order by date',
    [owner, id],
  );
  return { sowing, counts: rows.map(countOf) };
}

export async function sowingsOfBed(
  database: Database,
  owner: string,
  bed: string,
  limit: number,
): Promise<CountedSowing[]> {
  const last = 'from sowings where owner = $1 and bed = $2 order by date desc, id desc limit $3';
  const rows = await database.all<DocumentRow>(`select id, revision, fields ${last}`, [owner, bed, limit]);
  const counts = await database.all<CountRow>(
    `select sowing, date, revision, fields from counts where owner = $1 and sowing in (select id ${last}) order by date`,
    [owner, bed, limit],
  );
  return rows.reverse().map((row) => ({
    sowing: resourceOf<SowingFields>(row),
    counts: counts.filter(({ sowing }) => sowing === row.id).map(countOf),
  }));
}

export const putCount = (
  database: Database,
  owner: string,
  sowing: string,
  count: Count,
  ifRevision?: IfRevision,
): Promise<CountPut | undefined> =>
  changeOfSowing<CountPut>(database, owner, sowing, async (query, revision) => {
    const { date, ...fields } = count;
    const before = await findCount(query, owner, sowing, date);
    if (!isAtRevision(before?.revision, ifRevision)) return { result: { outcome: 'stale' }, different: false };
    if (before && sameFields(before, { ...count, revision: before.revision })) {
      return { result: { outcome: 'unchanged', kept: before }, different: false };
    }
    await query.run(
      `insert into counts (owner, sowing, date, revision, fields) values ($1, $2, $3, $4, $5)
       on conflict (owner, sowing, date) do update set revision = excluded.revision, fields = excluded.fields`,
      [owner, sowing, date, revision, JSON.stringify(fields)],
    );
    return { result: { outcome: before ? 'replaced' : 'created', kept: { ...count, revision } }, different: true };
  });

export const deleteCount = (
  database: Database,
  owner: string,
  sowing: string,
  date: PlainDate,
  ifRevision?: IfRevision,
): Promise<'deleted' | 'absent' | 'stale' | undefined> =>
  changeOfSowing<'deleted' | 'absent' | 'stale'>(database, owner, sowing, async (query) => {
    const before = await findCount(query, owner, sowing, date);
    if (!before) return { result: 'absent', different: false };
    if (!isAtRevision(before.revision, ifRevision)) return { result: 'stale', different: false };
    await query.run('delete from counts where owner = $1 and sowing = $2 and date = $3', [owner, sowing, date]);
    return { result: 'deleted', different: true };
  });

async function findCount(query: Query, owner: string, sowing: string, date: PlainDate): Promise<KeptCount | undefined> {
  const rows = await query.all<CountRow>(
    'select sowing, date, revision, fields from counts where owner = $1 and sowing = $2 and date = $3',
    [owner, sowing, date],
  );
  return rows[0] && countOf(rows[0]);
}

/**
 * Changes the counts of a sowing and touches its revision and its bed's unless nothing differed. Undefined: no such
 * sowing.
 */
const changeOfSowing = <T>(
  database: Database,
  owner: string,
  id: string,
  change: (query: Query, revision: number) => Promise<{ result: T; different: boolean }>,
): Promise<T | undefined> =>
  database.transaction(async (query) => {
    const revision = await takeOwnerLock(query, owner);
    const sowing: Sowing | undefined = await findDocument(query, sowings, owner, id);
    if (!sowing) return undefined;
    const { result, different } = await change(query, revision);
    if (different) {
      await query.run('update sowings set revision = $3 where owner = $1 and id = $2', [owner, id, revision]);
      await touchBedRevision(query, owner, sowing.bed, revision);
    }
    return result;
  });
