import type { Session } from '../../garden/store/session-store.js';
import type { Database } from '../database.js';
import { takeOwnerLock } from '../owner-lock.js';

interface SessionRow {
  readonly owner: string;
  readonly id: string;
  readonly key_proof: string;
  readonly created_at_ms: number;
  readonly used_at_ms: number;
  readonly expires_at_ms: number;
  readonly label: string;
}

const SELECT =
  'select owner, id, key_proof, created_at_ms, used_at_ms, expires_at_ms, label from sessions where expires_at_ms > $2';

const sessionOf = ({ owner, id, key_proof, created_at_ms, used_at_ms, expires_at_ms, label }: SessionRow): Session => ({
  owner,
  id,
  keyProof: key_proof,
  createdAtMs: created_at_ms,
  usedAtMs: used_at_ms,
  expiresAtMs: expires_at_ms,
  label,
});

export const beginSession = (
  database: Database,
  { owner, id, keyProof, createdAtMs, usedAtMs, expiresAtMs, label }: Session,
  tokenDigest: string,
  most: number,
): Promise<void> =>
  database.transaction(async (query) => {
    await takeOwnerLock(query, owner);
    await query.run('delete from sessions where owner = $1 and expires_at_ms <= $2', [owner, createdAtMs]);
    await query.run(
      `delete from sessions where owner = $1 and id not in
         (select id from sessions where owner = $1 order by created_at_ms desc, id limit $2)`,
      [owner, most - 1],
    );
    await query.run(
      `insert into sessions (owner, id, token_digest, key_proof, created_at_ms, used_at_ms, expires_at_ms, label)
       values ($1, $2, $3, $4, $5, $6, $7, $8)`,
      [owner, id, tokenDigest, keyProof, createdAtMs, usedAtMs, expiresAtMs, label],
    );
  });

export async function findSession(
  database: Database,
  tokenDigest: string,
  nowMs: number,
): Promise<Session | undefined> {
  const rows = await database.all<SessionRow>(`${SELECT} and token_digest = $1`, [tokenDigest, nowMs]);
  return rows[0] && sessionOf(rows[0]);
}

export const useSession = (database: Database, owner: string, id: string, nowMs: number): Promise<void> =>
  database.transaction(async (query) => {
    await takeOwnerLock(query, owner);
    await query.run('update sessions set used_at_ms = $3 where owner = $1 and id = $2', [owner, id, nowMs]);
  });

export async function listSessions(database: Database, owner: string, nowMs: number): Promise<Session[]> {
  const rows = await database.all<SessionRow>(`${SELECT} and owner = $1 order by created_at_ms desc, id`, [
    owner,
    nowMs,
  ]);
  return rows.map(sessionOf);
}

export const endSession = (database: Database, owner: string, id: string): Promise<'deleted' | 'absent'> =>
  database.transaction(async (query) => {
    await takeOwnerLock(query, owner);
    const deleted = await query.run('delete from sessions where owner = $1 and id = $2', [owner, id]);
    return deleted > 0 ? 'deleted' : 'absent';
  });
