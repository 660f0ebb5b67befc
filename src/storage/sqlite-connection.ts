import { setTimeout } from 'node:timers/promises';
import Libsql from 'libsql';
import { StorageError, type StorageErrorKind } from '../garden/store/storage-error.js';
import type { Value } from './database.js';

/**
 * How long to wait for another process that holds the file [ms], and how long at a time. SQLite's own way to wait would
 * hold up everybody in this process, perhaps the very one who holds the file.
 */
const WAIT_MS = 10_000;
const NAP_MS = 5;
const MAX_STATEMENTS = 300;

/** Primary result codes of SQLite that say that the file cannot be used now, not that the question was wrong. */
const KINDS: readonly (readonly [RegExp, StorageErrorKind])[] = [
  // Shared memory cannot grow on a full disk, which SQLite reports as an error of input and output.
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
  try {
    opened.exec('PRAGMA busy_timeout = 0');
    await patiently(() => opened.all('PRAGMA journal_mode = WAL', []));
    opened.exec('PRAGMA synchronous = FULL');
    opened.exec('PRAGMA foreign_keys = ON');
    // What a statement sets aside would otherwise need room on a disk that may be full.
    opened.exec('PRAGMA temp_store = MEMORY');
  } catch (error) {
    opened.close();
    throw error;
  }
  return opened;
}

/** Runs work again and again while another process holds the file. */
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

/** Runs work on the driver; what it says of an unusable file becomes a StorageError. */
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
