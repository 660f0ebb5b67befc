import type { IfRevision } from '../../garden/store/resource.js';
import type { LotFields } from '../../garden/store/season-store.js';
import type { Database } from '../database.js';
import { type DocumentTable, deleteDocument } from '../document-table.js';
import { takeOwnerLock } from '../owner-lock.js';

export const lots: DocumentTable<LotFields> = { name: 'lots', columns: [] };

export const deleteLot = (
  database: Database,
  owner: string,
  id: string,
  ifRevision?: IfRevision,
): Promise<'deleted' | 'absent' | 'has-sowings' | 'stale'> =>
  database.transaction(async (query) => {
    await takeOwnerLock(query, owner);
    const sown = await query.all('select id from sowings where owner = $1 and lot = $2 limit 1', [owner, id]);
    return sown.length > 0 ? 'has-sowings' : deleteDocument(query, lots, owner, id, ifRevision);
  });
