import type { Quotas } from '../garden/store/quotas.js';
import { type IfRevision, isAtRevision } from '../garden/store/resource.js';
import type { CropChoice } from '../garden/store/season-store.js';
import type { Kept, Page, Put } from '../garden/store/store.js';
import type { Database, Query } from './database.js';
import { takeOwnerLock } from './owner-lock.js';
import { sameFields } from './same-fields.js';
import { findBed, touchBedRevision } from './tables/beds.js';
import { refuseOneMore } from './tables/quotas.js';

/** Fields that also have a column of their own. */
interface QueriedFields {
  readonly crop: CropChoice;
  readonly bed?: string;
  readonly lot?: string | null;
  readonly date?: string;
}

/**
 * A document table: resources stored as the JSON of their fields. The fields that queries filter by have columns too.
 */
export interface DocumentTable<Fields extends QueriedFields> {
  readonly name: 'lots' | 'sowings' | 'plans';
  readonly columns: readonly (keyof Fields & keyof QueriedFields)[];
}

export interface DocumentRow {
  readonly id: string;
  readonly revision: number;
  readonly fields: string;
}

export const resourceOf = <Fields>({ id, revision, fields }: DocumentRow): Fields & Kept => ({
  ...(JSON.parse(fields) as Fields),
  id,
  revision,
});

export async function findDocument<Fields extends QueriedFields>(
  ask: Pick<Query, 'all'>,
  { name }: DocumentTable<Fields>,
  owner: string,
  id: string,
): Promise<(Fields & Kept) | undefined> {
  const rows = await ask.all<DocumentRow>(`select id, revision, fields from ${name} where owner = $1 and id = $2`, [
    owner,
    id,
  ]);
  return rows[0] && resourceOf<Fields>(rows[0]);
}

export async function listDocuments<Fields extends QueriedFields>(
  database: Database,
  { name }: DocumentTable<Fields>,
  owner: string,
  { after = '', limit, bed }: Page & { readonly bed?: string | undefined },
): Promise<(Fields & Kept)[]> {
  const rows = await database.all<DocumentRow>(
    `select id, revision, fields from ${name} where owner = $1 and id > $2 ${bed === undefined ? '' : 'and bed = $4'}
     order by id limit $3`,
    [owner, after, limit, ...(bed === undefined ? [] : [bed])],
  );
  return rows.map((row) => resourceOf<Fields>(row));
}

/**
 * Stores a resource and touches the revisions of its bed, of the bed that it leaves, and of the beds that a lot was
 * sown in.
 */
export const putDocument = <Fields extends QueriedFields>(
  database: Database,
  quotas: Quotas,
  table: DocumentTable<Fields>,
  owner: string,
  id: string,
  fields: Fields,
  ifRevision?: IfRevision,
): Promise<Put<Fields & Kept>> =>
  database.transaction(async (query) => {
    const revision = await takeOwnerLock(query, owner);
    const before = await findDocument(query, table, owner, id);
    const { bed, lot } = fields;
    if (bed !== undefined && !(await findBed(query, owner, bed))) return { outcome: 'no-bed' };
    if (typeof lot === 'string' && !(await hasLot(query, owner, lot))) return { outcome: 'no-lot' };
    if (!before) await refuseOneMore(query, quotas, table.name, owner);
    if (!isAtRevision(before?.revision, ifRevision)) return { outcome: 'stale' };
    const kept = { ...fields, id, revision };
    if (before && sameFields({ ...kept, revision: before.revision }, before)) {
      return { outcome: 'unchanged', kept: before };
    }
    const { name } = table;
    const columns = ['revision', 'fields', ...table.columns];
    await query.run(
      `insert into ${name} (owner, id, ${columns.join(', ')})
       values ($1, $2, ${columns.map((_, i) => `$${i + 3}`).join(', ')})
       on conflict (owner, id) do update set ${columns.map((column) => `${column} = excluded.${column}`).join(', ')}`,
      [
        owner,
        id,
        revision,
        JSON.stringify(fields),
        ...table.columns.map((column) => (fields as QueriedFields)[column] as string | null),
      ],
    );
    // A lot belongs to no bed, but the answers about beds that it was sown in depend on it.
    const sownIn =
      name === 'lots'
        ? await query.all<{ bed: string }>('select distinct bed from sowings where owner = $1 and lot = $2', [
            owner,
            id,
          ])
        : [];
    for (const changed of new Set([before?.bed, bed, ...sownIn.map((sowing) => sowing.bed)])) {
      if (changed !== undefined) await touchBedRevision(query, owner, changed, revision);
    }
    return { outcome: before ? 'replaced' : 'created', kept };
  });

/** Deletes a resource and touches the revision of its bed, if it has one. */
export async function deleteDocument<Fields extends QueriedFields>(
  query: Query,
  table: DocumentTable<Fields>,
  owner: string,
  id: string,
  ifRevision?: IfRevision,
): Promise<'deleted' | 'absent' | 'stale'> {
  const revision = await takeOwnerLock(query, owner);
  const before = await findDocument(query, table, owner, id);
  if (!before) return 'absent';
  if (!isAtRevision(before.revision, ifRevision)) return 'stale';
  await query.run(`delete from ${table.name} where owner = $1 and id = $2`, [owner, id]);
  if (before.bed !== undefined) await touchBedRevision(query, owner, before.bed, revision);
  return 'deleted';
}

const hasLot = async (query: Query, owner: string, id: string): Promise<boolean> =>
  (await query.all('select id from lots where owner = $1 and id = $2', [owner, id])).length > 0;
