import { setImmediate } from 'node:timers/promises';
import { StorageError } from '../../garden/store/storage-error.js';
import type { Database, Value } from '../database.js';
import { type OwnerQueue, ownerQueue } from '../owner-queue.js';
import { type DatabaseProbe, throttledProbe } from '../probe.js';
import { type Checkpoints, checkpoint, checkpoints } from './checkpoint.js';
import { commit, type Work } from './commit.js';
import { type Connection, connect, patiently } from './connection.js';
import { prepareFile, type SqliteFile, watchFile } from './file.js';

/** The service's own work, which belongs to no owner. */
const SERVICE = '';

/** Stands in for the file of a database in memory. */
const IN_MEMORY: SqliteFile = {
  requireSame() {},
  logBytes: () => 0,
  requireRoom() {},
  releaseReserve() {},
  isReleased: () => false,
  fillReserve() {},
};

/** An open database. */
interface Sqlite {
  readonly writer: Connection;
  /** A second connection; the writer itself for a database in memory. */
  readonly reader: Connection;
  readonly file: SqliteFile;
  readonly inTurn: OwnerQueue;
  readonly checkpoints: Checkpoints;
  readonly probe: DatabaseProbe;
}

/**
 * Opens an SQLite file and creates a missing one; `:memory:` is lost when closed.
 *
 * One connection writes, a transaction at a time; another reads committed rows. Every commit is synced to disk
 * before it is acknowledged. Statements run on this thread, which yields after each. The log needs checkpoints of our
 * own, because the driver closes a file only when its statements are garbage-collected.
 */
export async function openSqlite(path: string): Promise<Database> {
  const inMemory = path === ':memory:';
  if (!inMemory) prepareFile(path);
  const writer = await connect(path);
  const reader = inMemory ? writer : await connect(path);
  const file = inMemory ? IN_MEMORY : watchFile(path);
  const inTurn = ownerQueue(1, 1);
  const planned = checkpoints(writer, file, (make) => {
    // Nobody waits for it; the next commit finds a lasting fault.
    inTurn(SERVICE, async () => make()).catch(() => undefined);
  });
  const probe = throttledProbe(() => inTurn(SERVICE, () => tryWrite(writer, file)));
  return databaseFor({ writer, reader, file, inTurn, checkpoints: planned, probe }, SERVICE);
}

/** The database for an owner. @param frees Its transactions free space, and may use the reserve. */
function databaseFor(sqlite: Sqlite, owner: string, frees?: 'frees'): Database {
  const { writer, reader, inTurn, probe } = sqlite;
  return {
    keyType: 'text',
    // A write transaction excludes all others anyway.
    migrationLock: [],
    async all<Row>(sql: string, values: readonly Value[] = []) {
      const ask = () => read<Row>(sqlite, sql, values);
      return reader === writer ? inTurn(owner, ask) : ask();
    },
    transaction: (work) => inTurn(owner, () => write(sqlite, work, frees !== undefined)),
    for: (other, isFreeing) => databaseFor(sqlite, other, isFreeing),
    probe,
    scrub: () =>
      inTurn(SERVICE, async () => {
        await patiently(() => writer.exec('VACUUM'));
        checkpoint(writer);
      }),
    close: () => inTurn(SERVICE, async () => close(sqlite)),
  };
}

async function read<Row>({ reader, file }: Sqlite, sql: string, values: readonly Value[]): Promise<Row[]> {
  file.requireSame();
  const rows = await patiently(() => reader.all(sql, values));
  await setImmediate();
  return rows as Row[];
}

async function write<T>(sqlite: Sqlite, work: Work<T>, frees: boolean): Promise<T> {
  const { writer, file, probe } = sqlite;
  try {
    const waysOut = [() => checkpoint(writer), ...(frees ? [() => file.releaseReserve()] : [])];
    const result = await commit(writer, file, work, waysOut);
    probe.wrote(true);
    return result;
  } catch (error) {
    if (error instanceof StorageError) probe.wrote(false);
    throw error;
  } finally {
    // In the same turn, so that nobody else fills the freed space.
    cleanUp(sqlite);
  }
}

/** Prepares for the next commit. The previous one stays committed even if this fails. */
function cleanUp({ writer, file, checkpoints }: Sqlite): void {
  try {
    if (file.isReleased()) {
      checkpoint(writer);
      file.fillReserve();
    }
    checkpoints.plan();
  } catch (error) {
    if (!(error instanceof StorageError)) throw error;
  }
}

/** Writes a value without meaning. @throws StorageError as a real write would. */
async function tryWrite(writer: Connection, file: SqliteFile): Promise<void> {
  file.requireSame();
  // Writes an unused number of the file's header: the smallest commit.
  await patiently(() => writer.exec('PRAGMA user_version = 1'));
  file.fillReserve();
  file.requireRoom();
}

function close({ writer, reader, checkpoints }: Sqlite): void {
  checkpoints.stop();
  checkpoint(writer);
  if (reader !== writer) reader.close();
  writer.close();
}
