import type { Database } from '../database.js';

/** Past soil stored for one owner at most [bytes]: some twenty beds' hours of thirty years, packed. */
export const MAX_PAST_SOIL_BYTES = 32 * 1024 * 1024;
/** Rows of past soil of one owner at most, so that small ones do not pile up. */
export const MAX_PAST_SOIL_ROWS = 500;

export async function findPastSoil(database: Database, owner: string, key: string): Promise<Uint8Array | undefined> {
  const rows = await database.all<{ packed: Uint8Array | ArrayBuffer }>(
    'select packed from past_soil where owner = $1 and key = $2',
    [owner, key],
  );
  const packed = rows[0]?.packed;
  return packed && (packed instanceof Uint8Array ? packed : new Uint8Array(packed));
}

/** Stores a row. Above an owner's limits the rows stored longest ago go. A row above the whole limit is not stored. */
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
    const stored = await query.all<{ key: string; bytes: number }>(
      'select key, bytes from past_soil where owner = $1 order by kept_at_ms desc, key',
      [owner],
    );
    let bytes = 0;
    for (const [i, row] of stored.entries()) {
      bytes += row.bytes;
      if (bytes <= MAX_PAST_SOIL_BYTES && i < MAX_PAST_SOIL_ROWS) continue;
      await query.run('delete from past_soil where owner = $1 and key = $2', [owner, row.key]);
    }
  });
