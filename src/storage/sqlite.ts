import { setImmediate, setTimeout } from 'node:timers/promises';
import Libsql from 'libsql';
import { StorageError } from '../garden/storage-error.js';
import type { Database, Query, Value } from './database.js';

/**
 * How long to wait for who else holds the file [ms], and how long at a time. SQLite's own way to wait would hold up
 * everybody in this process, perhaps the very one who holds the file.
 */
const WAIT_MS = 10_000;
const NAP_MS = 5;
/** Statements kept prepared. */
const MOST_STATEMENTS = 300;

/** Primary result codes of SQLite that say that the file cannot be used now, not that the question was wrong. */
const UNUSABLE = /^SQLITE_(BUSY|LOCKED|FULL|READONLY|IOERR|CANTOPEN|NOTADB|CORRUPT|NOMEM|PERM|PROTOCOL)/;

/**
 * An SQLite file, made where there is none; `:memory:` is forgotten when closed.
 *
 * One connection writes, a transaction at a time; another reads what has been committed. Every commit is synced to disk
 * before it is acknowledged. A statement runs on this thread; after each, others have their turn.
 */
export async function openSqlite(path: string): Promise<Database> {
  const inMemory = path === ':memory:';
  const writer = await connect(path);
  const reader = inMemory ? writer : await connect(path);

  let last: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const turn = last.then(work);
    last = turn.catch(() => {});
    return turn;
  };

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

  return {
    keyType: 'text',
    // A transaction that writes keeps out all others as it is.
    migrationLock: 'select 1',
    async all<Row>(sql: string, values: readonly Value[] = []) {
      const ask = async () => {
        const rows = await patiently(() => reader.all(sql, values));
        await setImmediate();
        return rows as Row[];
      };
      return inMemory ? inTurn(ask) : ask();
    },
    transaction: (work) =>
      inTurn(async () => {
        await patiently(() => writer.exec('BEGIN IMMEDIATE'));
        try {
          const result = await work(inTransaction);
          writer.exec('COMMIT');
          return result;
        } catch (error) {
          // A full disk has rolled back already.
          if (writer.isInTransaction()) writer.exec('ROLLBACK');
          throw error;
        }
      }),
    scrub: () =>
      inTurn(async () => {
        await patiently(() => writer.exec('VACUUM'));
        await patiently(() => writer.all('PRAGMA wal_checkpoint(TRUNCATE)', []));
      }),
    close: () =>
      inTurn(async () => {
        if (reader !== writer) reader.close();
        writer.close();
      }),
  };
}

async function patiently<T>(work: () => T): Promise<T> {
  for (let waitedMs = 0; ; waitedMs += NAP_MS) {
    try {
      return work();
    } catch (error) {
      if (!isBusy(error) || waitedMs >= WAIT_MS) throw error;
      await setTimeout(NAP_MS);
    }
  }
}

const isBusy = (error: unknown): boolean =>
  error instanceof StorageError && /^SQLITE_BUSY/.test((error.cause as { code?: string }).code ?? '');

/** One connection, whose statements stay prepared. */
interface Connection {
  exec(sql: string): void;
  run(sql: string, values: readonly Value[]): number;
  all(sql: string, values: readonly Value[]): unknown[];
  isInTransaction(): boolean;
  close(): void;
}

async function connect(path: string): Promise<Connection> {
  const connection = translated(() => new Libsql(path), 'opened');
  const statements = new Map<string, Libsql.Statement<unknown[]>>();
  const prepared = (sql: string): Libsql.Statement<unknown[]> => {
    let statement = statements.get(sql);
    if (!statement) {
      if (statements.size >= MOST_STATEMENTS) statements.clear();
      // To SQLite `$2` is a name, and names are numbered as they come; `?2` is the second, wherever it stands.
      statement = connection.prepare(sql.replaceAll(/\$(\d+)/g, '?$1'));
      statements.set(sql, statement);
    }
    return statement;
  };
  const opened: Connection = {
    exec: (sql) => translated(() => void connection.exec(sql)),
    run: (sql, values) => translated(() => prepared(sql).run(values).changes),
    // Its get() gives other types than its all(), and leaves the statement unfinished.
    all: (sql, values) => translated(() => prepared(sql).all(values)),
    isInTransaction: () => connection.inTransaction,
    close: () => translated(() => void connection.close()),
  };
  opened.exec('PRAGMA busy_timeout = 0');
  await patiently(() => opened.all('PRAGMA journal_mode = WAL', []));
  opened.exec('PRAGMA synchronous = FULL');
  opened.exec('PRAGMA foreign_keys = ON');
  return opened;
}

/** Runs work on the driver; what it says of an unusable file becomes a StorageError. */
function translated<T>(work: () => T, done = 'used'): T {
  try {
    return work();
  } catch (error) {
    const { code, message } = error as { code?: string; message: string };
    const unusable = code ? UNUSABLE.test(code) : /ConnectionFailed|not open/.test(message);
    if (!unusable) throw error;
    throw new StorageError(`the SQLite file cannot be ${done}: ${message}`, { cause: error });
  }
}
