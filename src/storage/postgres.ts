import { randomBytes } from 'node:crypto';
import { setTimeout } from 'node:timers/promises';
import pg from 'pg';
import { StorageError } from '../garden/store/storage-error.js';
import type { Database, Query, Value } from './database.js';
import { ownerQueue } from './owner-queue.js';
import { throttledProbe } from './probe.js';

/** Connections in all, those of them for the work of owners, and those for one owner's: the rest is the service's own. */
const MAX_CONNECTIONS = 10;
const MAX_FOR_OWNERS = 8;
const MAX_PER_OWNER = 4;
/** A server that says nothing for so long is assumed to be lost [ms]. */
const CONNECT_WITHIN_MS = 5_000;
const ANSWER_WITHIN_MS = 60_000;
/**
 * When the server itself ends what takes too long [ms]: a statement, a wait for a lock, a transaction whose service has
 * gone silent and whose locks others wait for. Each before we give the server up.
 */
const STATEMENT_WITHIN_MS = 30_000;
const LOCK_WITHIN_MS = 15_000;
const IDLE_WITHIN_MS = 30_000;
/** So often work is begun again where the server had to choose between two transactions. */
const MAX_TRIES = 8;
const FIRST_NAP_MS = 5;

/** Where two transactions got in each other's way: serialization failure, deadlock. */
const CONFLICTS = ['40001', '40P01'];
/**
 * Classes and codes of SQLSTATE that say that the server cannot be used now, not that the question was wrong:
 * connection, resources (a full disk among them), operator, system, damage; a server in recovery may only be read.
 */
const UNUSABLE = /^(08|53|57|58|28|3D)|^(25006|25P03|55P03|40001|40P01|XX001|XX002)$/;
/** Of these: the disk is full; a table or an index is damaged. */
const DISK_FULL = '53100';
const DAMAGED = /^XX00[12]$/;

const INT8 = 20;
const types = new pg.TypeOverrides();
types.setTypeParser(INT8, Number);

/** As small a write as there is: the row takes its own place, and the table stays one page long. */
const PROBE = "update schema_migrations set name = name where name = '001-places-and-beds'";
/** What a server whose disk was full must have room for again before it counts as ready [bytes]. */
const PROBE_BYTES = 256 * 1024;

/** A PostgreSQL server, by its address. Connections that were lost are made anew by the next who asks. */
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
  // A connection that breaks while nobody asks is left out of the pool; whoever asks next is told of what then fails.
  pool.on('error', () => {});
  pool.on('connect', (client) => client.on('error', () => {}));

  /** Whether the last write found the disk full. */
  let wasFull = false;
  const probe = throttledProbe(async () => {
    await attempt(pool, ({ run }) => run(PROBE));
    // A row that takes the place of another needs no room.
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
      // Another's migration, or a step of ours, may take long.
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

/** Takes up some room, and gives it back by taking everything back. @throws StorageError where there is none. */
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

/** Waits for the driver; what it says of an unusable server becomes a StorageError. */
async function translated<T>(asked: Promise<T>): Promise<T> {
  try {
    return await asked;
  } catch (error) {
    // What the server says has an SQLSTATE; all else says that the server was not reached, or was lost.
    if (error instanceof pg.DatabaseError && !UNUSABLE.test(error.code ?? '')) throw error;
    const code = (error instanceof pg.DatabaseError && error.code) || '';
    const kind = code === DISK_FULL ? 'full' : DAMAGED.test(code) ? 'damaged' : 'unavailable';
    throw new StorageError(`the PostgreSQL server cannot be used: ${wordsOf(error)}`, { kind, cause: error });
  }
}

/** A host of several addresses fails with an error of several errors and no words of its own. */
const wordsOf = (error: unknown): string =>
  error instanceof AggregateError ? error.errors.map(wordsOf).join('; ') : (error as Error).message;
