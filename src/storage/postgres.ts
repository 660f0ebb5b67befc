import { setTimeout } from 'node:timers/promises';
import pg from 'pg';
import { StorageError } from '../garden/storage-error.js';
import type { Database, Query, Value } from './database.js';

const MOST_CONNECTIONS = 10;
/** A server that says nothing for so long is taken to be lost [ms]. */
const CONNECT_WITHIN_MS = 5_000;
const ANSWER_WITHIN_MS = 60_000;
/** So often work is begun again where the server had to choose between two transactions. */
const MOST_TRIES = 8;
const FIRST_NAP_MS = 5;

/** Where two transactions got in each other's way: serialization failure, deadlock. */
const CONFLICTS = ['40001', '40P01'];
/**
 * Classes and codes of SQLSTATE that say that the server cannot be used now, not that the question was wrong:
 * connection, resources (a full disk among them), operator, system; a server in recovery may only be read.
 */
const UNUSABLE = /^(08|53|57|58|28|3D)|^(25006|55P03|40001|40P01)$/;

const INT8 = 20;
const types = new pg.TypeOverrides();
types.setTypeParser(INT8, Number);

/** A PostgreSQL server, by its address. Connections that were lost are made anew by the next who asks. */
export async function openPostgres(url: string): Promise<Database> {
  const pool = new pg.Pool({
    connectionString: url,
    max: MOST_CONNECTIONS,
    connectionTimeoutMillis: CONNECT_WITHIN_MS,
    query_timeout: ANSWER_WITHIN_MS,
    keepAlive: true,
    types,
  });
  // A connection that breaks while nobody asks is left out of the pool; whoever asks next is told of what then fails.
  pool.on('error', () => {});
  pool.on('connect', (client) => client.on('error', () => {}));

  return {
    keyType: 'text collate "C"',
    migrationLock: 'select pg_advisory_xact_lock(730120551)',
    async all<Row>(sql: string, values: readonly Value[] = []) {
      return (await translated(pool.query(sql, [...values]))).rows as Row[];
    },
    async transaction(work) {
      for (let tries = 1; ; tries++) {
        try {
          return await attempt(pool, work);
        } catch (error) {
          if (!isConflict(error) || tries === MOST_TRIES) throw error;
          await setTimeout(FIRST_NAP_MS * 2 ** tries);
        }
      }
    },
    close: () => pool.end(),
  };
}

async function attempt<T>(pool: pg.Pool, work: (query: Query) => Promise<T>): Promise<T> {
  const client = await translated(pool.connect());
  const ask = (sql: string, values: readonly Value[] = []) => translated(client.query(sql, [...values]));
  let usable = true;
  try {
    await ask('begin');
    const result = await work({
      run: async (sql, values) => (await ask(sql, values)).rowCount ?? 0,
      all: async <Row>(sql: string, values?: readonly Value[]) => (await ask(sql, values)).rows as Row[],
    });
    await ask('commit');
    return result;
  } catch (error) {
    usable = await ask('rollback').then(
      () => true,
      () => false,
    );
    throw error;
  } finally {
    client.release(!usable);
  }
}

const isConflict = (error: unknown): boolean =>
  error instanceof StorageError && CONFLICTS.includes((error.cause as { code?: string }).code ?? '');

/** Waits for the driver; what it says of an unusable server becomes a StorageError. */
async function translated<T>(asked: Promise<T>): Promise<T> {
  try {
    return await asked;
  } catch (error) {
    // What the server says has an SQLSTATE; all else says that the server was not reached, or was lost.
    if (error instanceof pg.DatabaseError && !UNUSABLE.test(error.code ?? '')) throw error;
    throw new StorageError(`the PostgreSQL server cannot be used: ${wordsOf(error)}`, { cause: error });
  }
}

/** A host of several addresses fails with an error of several errors and no words of its own. */
const wordsOf = (error: unknown): string =>
  error instanceof AggregateError ? error.errors.map(wordsOf).join('; ') : (error as Error).message;
