import type { Query } from './database.js';

/**
 * Takes the next revision of an owner, which locks the owner's row until the transaction ends. Every write takes this
 * lock first and no other, so writes of one owner go one after the other on any number of instances and cannot
 * deadlock.
 *
 * Revisions may be skipped, but never come twice.
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
