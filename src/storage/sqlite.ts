import { setImmediate } from 'node:timers/promises';
import { StorageError } from '../garden/store/storage-error.js';
import type { Database, Query, Value } from './database.js';
import { ownerQueue } from './owner-queue.js';
import { throttledProbe } from './probe.js';
import { connect, patiently } from './sqlite-connection.js';
import { prepareFile, type SqliteFile, watchFile } from './sqlite-file.js';

/**
 * When the log is carried into the file: soon after a commit [ms], or, in a storm of commits, at this length [bytes]. A
 * short log is carried over within milliseconds, and a copy of the file alone lacks little.
 */
const CHECKPOINT_AFTER_MS = 1_000;
const CHECKPOINT_BYTES = 1024 * 1024;
/** Work of the service itself, which belongs to no owner. */
const SERVICE = '';

/** What a database in memory has instead of a file. */
const IN_MEMORY: SqliteFile = {
  requireSame() {},
  logBytes: () => 0,
  requireRoom() {},
  releaseReserve() {},
  isReleased: () => false,
  fillReserve() {},
};

/**
 * An SQLite file, made where there is none; `:memory:` is forgotten when closed.
 *
 * One connection writes, a transaction at a time; another reads what has been committed. Every commit is synced to disk
 * before it is acknowledged. A statement runs on this thread; after each, others have their turn.
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
      // What is written to a file that was removed meanwhile is lost.
      file.requireSame();
      writer.exec('COMMIT');
      return result;
    } catch (error) {
      // A full disk has rolled back already.
      if (writer.isInTransaction()) writer.exec('ROLLBACK');
      throw error;
    }
  }

  /** An attempt; where the disk is full, further ones with what room can be made. */
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
   * Carries the log into the file and empties it. Another process that reads, or a full disk, may keep it from doing so;
   * nothing is lost then, and the next checkpoint does it.
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
      // Nobody waits for it. A fault that stays is found by the next commit.
      inTurn(SERVICE, async () => isClosed || checkpoint()).catch(() => undefined);
    };
    planned = setTimeout(due, isLong ? 0 : CHECKPOINT_AFTER_MS).unref();
  }

  /** Makes ready for the next commit. The one before stays as it ended, whatever comes of this. */
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
      // A number in the file's header that nothing else needs: as small a commit as there is.
      await patiently(() => writer.exec('PRAGMA user_version = 1'));
      file.fillReserve();
      file.requireRoom();
    }),
  );

  const forOwner = (owner: string, frees?: 'frees'): Database => ({
    keyType: 'text',
    // A transaction that writes keeps out all others as it is.
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
          // In the same turn, so that nobody else fills what was freed.
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
