import { setTimeout } from 'node:timers/promises';
import Libsql from 'libsql';
import { StorageError, type StorageErrorKind } from '../../garden/store/storage-error.js';
import type { Value } from '../database.js';

/**
 * Total time to wait for another process that holds the file [ms], and the length of a nap. SQLite's own waiting would
 * block this whole process, perhaps the very one that holds the file.
 */
const WAIT_MS = 10_000;
const NAP_MS = 5;
const MAX_STATEMENTS = 300;

/** Primary result codes of SQLite that mean an unavailable file, not a wrong query. */
const KINDS: readonly (readonly [RegExp, StorageErrorKind])[] = [
  // SQLite reports shared memory that cannot grow on a full disk as an I/O error.
  [/^SQLITE_(FULL|IOERR_SHMSIZE)/, 'full'],
  [/^SQLITE_(CORRUPT|NOTADB)/, 'damaged'],
  [/^SQLITE_(BUSY|LOCKED|READONLY|IOERR|CANTOPEN|NOMEM|PERM|PROTOCOL)/, 'unavailable'],
];

/** One connection, whose statements stay prepared. */
export interface Connection {
  exec(sql: string): void;
  run(sql: string, values: readonly Value[]): number;
  all(sql: string, values: readonly Value[]): unknown[];
  isInTransaction(): boolean;
  close(): void;
}

export async function connect(path: string): Promise<Connection> {
  const connection = translated(() => new Libsql(path), 'opened');
  const statements = new Map<string, Libsql.Statement<unknown[]>>();
  const prepared = (sql: string): Libsql.Statement<unknown[]> => {
    let statement = statements.get(sql);
    if (!statement) {
      if (statements.size >= MAX_STATEMENTS) statements.clear();
      // SQLite takes `$2` for a name and numbers names in order of appearance; `?2` is always the second.
      statement = connection.prepare(sql.replaceAll(/\$(\d+)/g, '?$1'));
      statements.set(sql, statement);
    }
    return statement;
  };
  const opened: Connection = {
    exec: (sql) => translated(() => void connection.exec(sql)),
    run: (sql, values) => translated(() => prepared(sql).run(values).changes),
    // The driver's get() returns other types than its all() and leaves the statement unfinished.
    all: (sql, values) => translated(() => prepared(sql).all(values)),
    isInTransaction: () => connection.inTransaction,
    close: () => translated(() => void connection.close()),
  };
  try {
    opened.exec('PRAGMA busy_timeout = 0');
    await patiently(() => opened.all('PRAGMA journal_mode = WAL', []));
    opened.exec('PRAGMA synchronous = FULL');
    opened.exec('PRAGMA foreign_keys = ON');
    // Temporary data would otherwise need space on a disk that may be full.
    opened.exec('PRAGMA temp_store = MEMORY');
  } catch (error) {
    opened.close();
    throw error;
  }
  return opened;
}

/** Retries work while another process holds the file. */
export async function patiently<T>(work: () => T): Promise<T> {
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
  error instanceof StorageError && /^SQLITE_BUSY/.test((error.cause as { code?: string } | undefined)?.code ?? '');

/** Runs the driver and turns its errors of an unavailable file into a StorageError. */
function translated<T>(work: () => T, done = 'used'): T {
  try {
    return work();
  } catch (error) {
    const { code = '', message } = error as { code?: string; message: string };
    const kind = KINDS.find(([codes]) => codes.test(code))?.[1];
    const isUnopened = code === '' && /ConnectionFailed|not open/.test(message);
    if (!kind && !isUnopened) throw error;
    const reason = /^SQLITE_READONLY/.test(code) ? 'it may only be read' : message;
    throw new StorageError(`the SQLite file cannot be ${done}: ${reason}`, {
      kind: kind ?? 'unavailable',
      cause: error,
    });
  }
}
