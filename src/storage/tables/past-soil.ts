import type { Database } from '../database.js';

/** How much past soil is kept of one owner [bytes]: some twenty beds' hours of thirty years, packed. */
export const MAX_PAST_SOIL_BYTES = 32 * 1024 * 1024;
/** How many pieces of it, so that small ones do not pile up. */
export const MAX_PAST_SOIL_ROWS = 500;

export async function findPastSoil(database: Database, owner: string, key: string): Promise<Uint8Array | undefined> {
  const rows = await database.all<{ packed: Uint8Array | ArrayBuffer }>(
    'select packed from past_soil where owner = $1 and key = $2',
    [owner, key],
  );
  const packed = rows[0]?.packed;
  return packed && (packed instanceof Uint8Array ? packed : new Uint8Array(packed));
}

/** Keeps a piece; those least lately kept give way to it. One larger than all of the owner's room is not kept. */
export const keepPastSoil = (
  database: Database,
  owner: string,
  key: string,
  packed: Uint8Array,
  nowMs: number,
): Promise<void> =>
  database.transaction(async (query) => {
    await query.run(
      `insert into past_soil (owner, key, kept_at_ms, bytes, packed) values ($1, $2, $3, $4, $5)
       on conflict (owner, key) do update set
         kept_at_ms = excluded.kept_at_ms, bytes = excluded.bytes, packed = excluded.packed`,
      [owner, key, nowMs, packed.length, packed],
    );
    const kept = await query.all<{ key: string; bytes: number }>(
      'select key, bytes from past_soil where owner = $1 order by kept_at_ms desc, key',
      [owner],
    );
    let bytes = 0;
    for (const [i, piece] of kept.entries()) {
      bytes += piece.bytes;
      if (bytes <= MAX_PAST_SOIL_BYTES && i < MAX_PAST_SOIL_ROWS) continue;
      await query.run('delete from past_soil where owner = $1 and key = $2', [owner, piece.key]);
    }
  });
