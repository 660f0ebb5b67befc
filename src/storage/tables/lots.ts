import type { IfRevision } from '../../garden/store/kept.js';
import type { LotFields } from '../../garden/store/season-store.js';
import type { Database } from '../database.js';
import { deleteKept, type KeptTable } from '../kept-rows.js';
import { takeTurn } from '../owner-turn.js';

export const lots: KeptTable<LotFields> = { name: 'lots', columns: [] };

export const deleteLot = (
  database: Database,
  owner: string,
  id: string,
  ifRevision?: IfRevision,
): Promise<'deleted' | 'absent' | 'has-sowings' | 'stale'> =>
  database.transaction(async (query) => {
    await takeTurn(query, owner);
    const sown = await query.all('select id from sowings where owner = $1 and lot = $2 limit 1', [owner, id]);
    return sown.length > 0 ? 'has-sowings' : deleteKept(query, lots, owner, id, ifRevision);
  });
