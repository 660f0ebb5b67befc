import type { Query } from './database.js';

/**
 * The next revision of an owner. Whoever has taken it is alone with the owner's rows until the transaction ends: the
 * row of the owner is locked, so that every change of one owner's things waits here, and never deeper in.
 *
 * Revisions that were taken and not used are left out; none comes twice.
 */
export async function takeOwnerLock(query: Query, owner: string): Promise<number> {
  const rows = await query.all<{ revision: number }>(
    `insert into owners (owner, revision) values ($1, 1)
     on conflict (owner) do update set revision = owners.revision + 1
     returning revision`,
    [owner],
  );
  return rows[0]!.revision;
}
