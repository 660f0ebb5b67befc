import { randomBytes } from 'node:crypto';
import { setTimeout } from 'node:timers/promises';
import pg from 'pg';
import { StorageError } from '../garden/store/storage-error.js';
import type { Database, Query, Value } from './database.js';
import { ownerQueue } from './owner-queue.js';
import { throttledProbe } from './probe.js';

/** Connections in all, for owners together, and for one owner; the service itself has the rest. */
const MAX_CONNECTIONS = 10;
const MAX_FOR_OWNERS = 8;
const MAX_PER_OWNER = 4;
/** Silence after which the server counts as lost [ms]. */
const CONNECT_WITHIN_MS = 5_000;
const ANSWER_WITHIN_MS = 60_000;
/**
 * Time-outs on the server [ms]: of a statement, of waiting for a lock, and of a transaction whose service has gone
 * silent and whose locks others wait for. Each is shorter than our own.
 */
const STATEMENT_WITHIN_MS = 30_000;
const LOCK_WITHIN_MS = 15_000;
const IDLE_WITHIN_MS = 30_000;
/** Attempts at work that the server rolled back because of a conflict with another transaction. */
const MAX_TRIES = 8;
const FIRST_NAP_MS = 5;

/** Conflicts of two transactions: serialization failure, deadlock. */
const CONFLICTS = ['40001', '40P01'];
/**
 * Classes and codes of SQLSTATE that mean an unavailable server, not a wrong query:
 * connection, resources (a full disk among them), operator, system, damage; a server in recovery is read-only.
 */
const UNUSABLE = /^(08|53|57|58|28|3D)|^(25006|25P03|55P03|40001|40P01|XX001|XX002)$/;
/** Among these: the disk is full; a table or an index is damaged. */
const DISK_FULL = '53100';
const DAMAGED = /^XX00[12]$/;

const INT8 = 20;
const types = new pg.TypeOverrides();
types.setTypeParser(INT8, Number);

/** The smallest write: the row replaces itself, and the table stays one page long. */
const PROBE = "update schema_migrations set name = name where name = '001-places-and-beds'";
/** Space that a server must have again after a full disk before it counts as ready [bytes]. */
const PROBE_BYTES = 256 * 1024;

/** Opens a PostgreSQL server by its address. The pool replaces lost connections at the next query. */
export async function openPostgres(url: string): Promise<Database> {
  const pool = new pg.Pool({
    connectionString: url,
    max: MAX_CONNECTIONS,
    connectionTimeoutMillis: CONNECT_WITHIN_MS,
    query_timeout: ANSWER_WITHIN_MS,
    statement_timeout: STATEMENT_WITHIN_MS,
    lock_timeout: LOCK_WITHIN_MS,
    idle_in_transaction_session_timeout: IDLE_WITHIN_MS,
    keepAlive: true,
    types,
  });
  // The pool drops an idle connection that breaks; the next query reports any lasting fault.
  pool.on('error', () => {});
  pool.on('connect', (client) => client.on('error', () => {}));

  /** True when the last write found the disk full. */
  let wasFull = false;
  const probe = throttledProbe(async () => {
    await attempt(pool, ({ run }) => run(PROBE));
    // A row that replaces another needs no space.
    if (wasFull) await requireRoom(pool);
    wasFull = false;
  });

  async function transaction<T>(work: (query: Query) => Promise<T>): Promise<T> {
    for (let tries = 1; ; tries++) {
      try {
        const result = await attempt(pool, work);
        wasFull = false;
        probe.wrote(true);
        return result;
      } catch (error) {
        if (isConflict(error) && tries < MAX_TRIES) {
          await setTimeout(FIRST_NAP_MS * 2 ** tries);
          continue;
        }
        if (error instanceof StorageError) {
          wasFull = error.kind === 'full';
          probe.wrote(false);
        }
        throw error;
      }
    }
  }

  const all: Query['all'] = async <Row>(sql: string, values: readonly Value[] = []) =>
    (await translated(pool.query(sql, [...values]))).rows as Row[];

  const inTurn = ownerQueue(MAX_FOR_OWNERS, MAX_PER_OWNER);
  const database: Database = {
    keyType: 'text collate "C"',
    migrationLock: [
      // A migration, here or in another instance, may take long.
      'set local lock_timeout = 0',
      'set local statement_timeout = 0',
      'select pg_advisory_xact_lock(730120551)',
    ],
    all,
    transaction,
    for: (owner) => ({
      ...database,
      all: (sql, values) => inTurn(owner, () => all(sql, values)),
      transaction: (work) => inTurn(owner, () => transaction(work)),
    }),
    probe,
    close: () => pool.end(),
  };
  return database;
}

/** Allocates some space and rolls it back. @throws StorageError when there is none. */
async function requireRoom(pool: pg.Pool): Promise<void> {
  const takenBack = new Error('taken back');
  await attempt(pool, async ({ run }) => {
    await run('create table room_probe (bytes bytea)');
    await run('insert into room_probe values ($1)', [randomBytes(PROBE_BYTES)]);
    throw takenBack;
  }).catch((error: unknown) => {
    if (error !== takenBack) throw error;
  });
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

/** Awaits the driver and turns its errors of an unavailable server into a StorageError. */
async function translated<T>(asked: Promise<T>): Promise<T> {
  try {
    return await asked;
  } catch (error) {
    // Errors of the server have an SQLSTATE; all others mean that it was unreachable or lost.
    if (error instanceof pg.DatabaseError && !UNUSABLE.test(error.code ?? '')) throw error;
    const code = (error instanceof pg.DatabaseError && error.code) || '';
    const kind = code === DISK_FULL ? 'full' : DAMAGED.test(code) ? 'damaged' : 'unavailable';
    throw new StorageError(`the PostgreSQL server cannot be used: ${wordsOf(error)}`, { kind, cause: error });
  }
}

/** A host of several addresses fails with an error of several errors and no message of its own. */
const wordsOf = (error: unknown): string =>
  error instanceof AggregateError ? error.errors.map(wordsOf).join('; ') : (error as Error).message;
