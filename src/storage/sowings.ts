import type { PlainDate } from '../basics/calendar.js';
import type { Count, CountedSowing, Sowing, SowingFields } from '../garden/season-store.js';
import { raiseBed } from './beds.js';
import type { Database, Query } from './database.js';
import { findKept, type KeptRow, type KeptTable, keptOf } from './kept-rows.js';
import { takeTurn } from './owner-turn.js';
import { sameFields } from './same-fields.js';

export const sowings: KeptTable<SowingFields> = { name: 'sowings', columns: ['bed', 'lot', 'date'] };

/** A count without its date, which has a column of its own. */
interface CountRow {
  readonly sowing: string;
  readonly date: PlainDate;
  readonly fields: string;
}

const countOf = ({ date, fields }: CountRow): Count => ({ date, ...(JSON.parse(fields) as Omit<Count, 'date'>) });

export async function findSowing(database: Database, owner: string, id: string): Promise<CountedSowing | undefined> {
  const sowing = await findKept(database, sowings, owner, id);
  if (!sowing) return undefined;
  const rows = await database.all<CountRow>(
    'select sowing, date, fields from counts where owner = $1 and sowing = $2 order by date',
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
  const rows = await database.all<KeptRow>(`select id, revision, fields ${last}`, [owner, bed, limit]);
  const counts = await database.all<CountRow>(
    `select sowing, date, fields from counts where owner = $1 and sowing in (select id ${last}) order by date`,
    [owner, bed, limit],
  );
  return rows.reverse().map((row) => ({
    sowing: keptOf<SowingFields>(row),
    counts: counts.filter(({ sowing }) => sowing === row.id).map(countOf),
  }));
}

export const putCount = (
  database: Database,
  owner: string,
  sowing: string,
  count: Count,
): Promise<'created' | 'replaced' | 'unchanged' | undefined> =>
  changeOfSowing(database, owner, sowing, async (query) => {
    const { date, ...fields } = count;
    const before = await findCount(query, owner, sowing, date);
    if (before && sameFields(before, count)) return 'unchanged';
    await query.run(
      `insert into counts (owner, sowing, date, fields) values ($1, $2, $3, $4)
       on conflict (owner, sowing, date) do update set fields = excluded.fields`,
      [owner, sowing, date, JSON.stringify(fields)],
    );
    return before ? 'replaced' : 'created';
  });

export const deleteCount = (
  database: Database,
  owner: string,
  sowing: string,
  date: PlainDate,
): Promise<'deleted' | 'absent' | undefined> =>
  changeOfSowing(database, owner, sowing, async (query) => {
    const of = [owner, sowing, date];
    const deleted = await query.run('delete from counts where owner = $1 and sowing = $2 and date = $3', of);
    return deleted > 0 ? 'deleted' : 'absent';
  });

async function findCount(query: Query, owner: string, sowing: string, date: PlainDate): Promise<Count | undefined> {
  const rows = await query.all<CountRow>(
    'select sowing, date, fields from counts where owner = $1 and sowing = $2 and date = $3',
    [owner, sowing, date],
  );
  return rows[0] && countOf(rows[0]);
}

/** Changes the counts of a sowing; unless nothing was, it and its bed are no longer as they were. Undefined: no such sowing. */
const changeOfSowing = <T extends string>(
  database: Database,
  owner: string,
  id: string,
  change: (query: Query) => Promise<T>,
): Promise<T | undefined> =>
  database.transaction(async (query) => {
    const revision = await takeTurn(query, owner);
    const sowing: Sowing | undefined = await findKept(query, sowings, owner, id);
    if (!sowing) return undefined;
    const outcome = await change(query);
    if (outcome !== 'unchanged' && outcome !== 'absent') {
      await query.run('update sowings set revision = $3 where owner = $1 and id = $2', [owner, id, revision]);
      await raiseBed(query, owner, sowing.bed, revision);
    }
    return outcome;
  });
