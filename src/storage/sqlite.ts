import { setImmediate } from 'node:timers/promises';
import { StorageError } from '../garden/store/storage-error.js';
import type { Database, Query, Value } from './database.js';
import { ownerQueue } from './owner-queue.js';
import { throttledProbe } from './probe.js';
import { connect, patiently } from './sqlite-connection.js';
import { prepareFile, type SqliteFile, watchFile } from './sqlite-file.js';

/**
 * Time of a checkpoint: soon after a commit [ms], or, under many commits, at this length of the log [bytes]. A
 * short log is copied within milliseconds, and a copy of the file alone lacks little.
 */
const CHECKPOINT_AFTER_MS = 1_000;
const CHECKPOINT_BYTES = 1024 * 1024;
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

  const inTransaction: Query = {
    async run(sql, values = []) {
      const changes = writer.run(sql, values);
      await setImmediate();
      return changes;
    },
    async all<Row>(sql: string, values: readonly Value[] = []) {
      const rows = writer.all(sql, values);
      await setImmediate();
      return rows as Row[];
    },
  };

  async function attempt<T>(work: (query: Query) => Promise<T>): Promise<T> {
    file.requireSame();
    await patiently(() => writer.exec('BEGIN IMMEDIATE'));
    try {
      const result = await work(inTransaction);
      // A write into a file that was removed meanwhile would be lost.
      file.requireSame();
      writer.exec('COMMIT');
      return result;
    } catch (error) {
      // A full disk has rolled back already.
      if (writer.isInTransaction()) writer.exec('ROLLBACK');
      throw error;
    }
  }

  /** Attempts a commit. On a full disk it empties the log and tries again; a deletion may then release the reserve. */
  async function commit<T>(work: (query: Query) => Promise<T>, frees: boolean): Promise<T> {
    const waysOut = [checkpoint, ...(frees ? [file.releaseReserve] : [])];
    for (;;) {
      try {
        const result = await attempt(work);
        probe.wrote(true);
        return result;
      } catch (error) {
        const makeRoom = isFull(error) ? waysOut.shift() : undefined;
        if (!makeRoom) {
          if (error instanceof StorageError) probe.wrote(false);
          throw error;
        }
        makeRoom();
      }
    }
  }

  /**
   * Copies the log into the file and empties it. A reading process or a full disk may prevent that; nothing is lost
   * then, and the next checkpoint does it.
   */
  function checkpoint(): void {
    try {
      writer.all('PRAGMA wal_checkpoint(TRUNCATE)', []);
    } catch (error) {
      if (!(error instanceof StorageError)) throw error;
    }
  }

  let isClosed = false;
  let planned: NodeJS.Timeout | undefined;
  function planCheckpoint(): void {
    const isLong = file.logBytes() >= CHECKPOINT_BYTES;
    if (planned && !isLong) return;
    clearTimeout(planned);
    const due = () => {
      planned = undefined;
      // Nobody waits for it; the next commit finds a lasting fault.
      inTurn(SERVICE, async () => isClosed || checkpoint()).catch(() => undefined);
    };
    planned = setTimeout(due, isLong ? 0 : CHECKPOINT_AFTER_MS).unref();
  }

  /** Prepares for the next commit. The previous one stays committed even if this fails. */
  function cleanUp(): void {
    try {
      if (file.isReleased()) {
        checkpoint();
        file.fillReserve();
      }
      planCheckpoint();
    } catch (error) {
      if (!(error instanceof StorageError)) throw error;
    }
  }

  const probe = throttledProbe(() =>
    inTurn(SERVICE, async () => {
      file.requireSame();
      // Writes an unused number of the file's header: the smallest commit.
      await patiently(() => writer.exec('PRAGMA user_version = 1'));
      file.fillReserve();
      file.requireRoom();
    }),
  );

  const forOwner = (owner: string, frees?: 'frees'): Database => ({
    keyType: 'text',
    // A write transaction excludes all others anyway.
    migrationLock: [],
    async all<Row>(sql: string, values: readonly Value[] = []) {
      const ask = async () => {
        file.requireSame();
        const rows = await patiently(() => reader.all(sql, values));
        await setImmediate();
        return rows as Row[];
      };
      return inMemory ? inTurn(owner, ask) : ask();
    },
    transaction: (work) =>
      inTurn(owner, async () => {
        try {
          return await commit(work, frees !== undefined);
        } finally {
          // In the same turn, so that nobody else fills the freed space.
          cleanUp();
        }
      }),
    for: forOwner,
    probe,
    scrub: () =>
      inTurn(SERVICE, async () => {
        await patiently(() => writer.exec('VACUUM'));
        checkpoint();
      }),
    close: () =>
      inTurn(SERVICE, async () => {
        clearTimeout(planned);
        isClosed = true;
        checkpoint();
        if (reader !== writer) reader.close();
        writer.close();
      }),
  });
  return forOwner(SERVICE);
}

const isFull = (error: unknown): boolean => error instanceof StorageError && error.kind === 'full';
