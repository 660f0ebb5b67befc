import type { Usage } from '../garden/store.js';
import type { Database } from './database.js';

/** All counts are of rows of the owner's own keys; of what is packed only the lengths are read. */
export async function findUsage(database: Database, owner: string): Promise<Usage> {
  const count = (table: string): string => `(select count(*) from ${table} where owner = $1) as ${table}`;
  const bytes = (table: string): string => `(select coalesce(sum(length(packed)), 0) from ${table} where owner = $1)`;
  const tables = ['places', 'beds', 'sowings', 'lots', 'plans', 'subscriptions'] as const;
  const [row] = await database.all<Record<(typeof tables)[number] | 'bytes', number | string>>(
    `select ${tables.map(count).join(', ')}, ${bytes('reading_days')} + ${bytes('air_years')} as bytes`,
    [owner],
  );
  // PostgreSQL gives sums as text.
  return Object.fromEntries(Object.entries(row!).map(([name, value]) => [name, Number(value)])) as unknown as Usage;
}
