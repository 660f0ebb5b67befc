import { statfsSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { sqlitePath } from '../database-url.js';

/**
 * Sizes of an SQLite file and its log, and the free space on their disk [bytes]; empty for another kind of database.
 */
export function diskUse(databaseUrl: string): { fileBytes?: number; walBytes?: number; diskFreeBytes?: number } {
  const path = sqlitePath(databaseUrl);
  if (path === undefined || path === ':memory:') return {};
  const { bavail, bsize } = statfsSync(dirname(path));
  const sizeOf = (file: string): number => statSync(file, { throwIfNoEntry: false })?.size ?? 0;
  return { fileBytes: sizeOf(path), walBytes: sizeOf(`${path}-wal`), diskFreeBytes: bavail * bsize };
}
