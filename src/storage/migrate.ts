import type { Database } from './database.js';
import { migrations } from './migrations/list.js';
import type { Migration } from './migrations/migration.js';

/**
 * Migrates an empty database, or one of an earlier version, to the current schema. Instances that start at the same
 * time wait for one another, and each step runs once.
 *
 * @throws Error when a later version has migrated the database.
 */
export async function migrate(database: Database, upTo: readonly Migration[] = migrations): Promise<void> {
  await database.transaction(async (query) => {
    for (const statement of database.migrationLock) await query.all(statement);
    await query.run(`create table if not exists schema_migrations (name ${database.keyType} primary key)`);
    const rows = await query.all<{ name: string }>('select name from schema_migrations order by name');
    const unknown = rows.filter(({ name }) => !upTo.some((step) => step.name === name));
    if (unknown.length > 0) {
      throw new Error(`the database was used by a later version: ${unknown.map(({ name }) => name).join(', ')}`);
    }
    const done = new Set(rows.map(({ name }) => name));
    for (const { name, statements, carryOver } of upTo.filter((step) => !done.has(step.name))) {
      for (const statement of statements(database.keyType)) await query.run(statement);
      await carryOver?.(query);
      await query.run('insert into schema_migrations (name) values ($1)', [name]);
    }
  });
}
