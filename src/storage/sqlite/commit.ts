import { setImmediate } from 'node:timers/promises';
import { StorageError } from '../../garden/store/storage-error.js';
import type { Query, Value } from '../database.js';
import { type Connection, patiently } from './connection.js';
import type { SqliteFile } from './file.js';

/** The work of one transaction. */
export type Work<T> = (query: Query) => Promise<T>;

/** Runs one transaction. An error rolls it back. */
export async function attempt<T>(writer: Connection, file: SqliteFile, work: Work<T>): Promise<T> {
  file.requireSame();
  await patiently(() => writer.exec('BEGIN IMMEDIATE'));
  try {
    const result = await work(queryOf(writer));
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

/**
 * Runs a transaction and repeats it on a full disk after making room.
 *
 * @param waysOut Ways to make room, each tried once.
 */
export async function commit<T>(
  writer: Connection,
  file: SqliteFile,
  work: Work<T>,
  waysOut: readonly (() => void)[],
): Promise<T> {
  for (let tries = 0; ; tries++) {
    try {
      return await attempt(writer, file, work);
    } catch (error) {
      const makeRoom = isFull(error) ? waysOut[tries] : undefined;
      if (!makeRoom) throw error;
      makeRoom();
    }
  }
}

/** Queries within the current transaction. They yield after each statement. */
const queryOf = (writer: Connection): Query => ({
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
});

const isFull = (error: unknown): boolean => error instanceof StorageError && error.kind === 'full';
