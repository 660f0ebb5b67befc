import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync, statSync } from 'node:fs';
import Libsql from 'libsql';
import { sqlitePath } from '../database-url.js';

/** Time to wait while a service is writing [ms]. */
const WAIT_MS = 10_000;

/**
 * Copies an SQLite database, as it is at one moment, into a new file. Services may read and write the database
 * meanwhile.
 *
 * @returns Size of the copy [bytes].
 * @throws Error in words when there is nothing to copy or the copy fails; no file is left then.
 */
export function backUp(databaseUrl: string, file: string): number {
  const path = sqlitePath(databaseUrl);
  if (path === undefined) throw new Error('a PostgreSQL database is backed up by its own program, pg_dump');
  if (path === ':memory:') throw new Error('a database in memory cannot be backed up');
  if (!existsSync(path)) throw new Error(`there is no database file ${path}`);
  claim(file);
  const part = `${file}.part`;
  try {
    claim(part);
    copy(path, part);
    sync(part);
    renameSync(part, file);
    return statSync(file).size;
  } catch (error) {
    for (const made of [part, file]) rmSync(made, { force: true });
    throw error;
  }
}

/** Creates an empty file that only its owner can read; an existing file is an error. */
function claim(file: string): void {
  try {
    closeSync(openSync(file, 'wx', 0o600));
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    throw new Error(code === 'EEXIST' ? `${file} is there already, and is not overwritten` : message);
  }
}

function copy(path: string, to: string): void {
  const source = new Libsql(path);
  try {
    source.exec(`PRAGMA busy_timeout = ${WAIT_MS}`);
    source.prepare('VACUUM INTO ?').run([to]);
  } finally {
    source.close();
  }
}

function sync(file: string): void {
  const opened = openSync(file, 'r+');
  try {
    fsyncSync(opened);
  } finally {
    closeSync(opened);
  }
}
