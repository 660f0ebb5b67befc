import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';

/** An empty database for one test file, and the way to be rid of it. */
export interface EmptyDatabase {
  readonly url: string;
  remove(): Promise<void>;
}

/** A file in a folder of its own. */
export async function emptySqlite(): Promise<EmptyDatabase> {
  const folder = await mkdtemp(join(tmpdir(), 'storage-'));
  return { url: `sqlite:${join(folder, 'data.db')}`, remove: () => rm(folder, { recursive: true }) };
}

/** A schema of its own in a database that is there. */
export async function emptyPostgres(server: string): Promise<EmptyDatabase> {
  const schema = `test_${randomUUID().replaceAll('-', '')}`;
  const say = async (sql: string) => {
    const client = new pg.Client({ connectionString: server });
    await client.connect();
    await client.query(sql);
    await client.end();
  };
  await say(`create schema ${schema}`);
  const url = new URL(server);
  url.searchParams.set('options', `-c search_path=${schema}`);
  return { url: url.href, remove: () => say(`drop schema ${schema} cascade`) };
}

/** The PostgreSQL to test on, where there is one. */
export const postgresServer = process.env.TEST_DATABASE_URL;
