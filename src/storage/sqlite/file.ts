import { randomBytes } from 'node:crypto';
import {
  accessSync,
  chmodSync,
  closeSync,
  constants,
  openSync,
  rmSync,
  type Stats,
  statfsSync,
  statSync,
  writeSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { StorageError } from '../../garden/store/storage-error.js';

/**
 * Bytes reserved in a file beside the database. On a full disk they are released so that something can be deleted:
 * SQLite writes the pages that a deletion changes to its log before it frees any. They exceed the growth of the log
 * between two checkpoints plus one large upload (4 MB of JSON store 1.3 MB).
 */
const RESERVE_BYTES = 4 * 1024 * 1024;
/** Minimum free space of the disk [bytes]; a common write would not fit into less. */
const MIN_FREE_BYTES = 1024 * 1024;
const PRIVATE = 0o600;

/** The database file on its disk: what SQLite itself does not check. */
export interface SqliteFile {
  /** @throws StorageError when the file was removed or replaced since it was opened. */
  requireSame(): void;
  /** Present length of the log [bytes]. */
  logBytes(): number;
  /** @throws StorageError when the disk is nearly full. */
  requireRoom(): void;
  /** Makes space on a full disk. */
  releaseReserve(): void;
  isReleased(): boolean;
  /** Reserves the space again, if there is enough. */
  fillReserve(): void;
}

/** Creates a missing file that only its owner can read; SQLite gives its log the same mode. */
export function prepareFile(path: string): void {
  try {
    closeSync(openSync(path, 'wx', PRIVATE));
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    if (code !== 'EEXIST') throw new StorageError(`the SQLite file cannot be made: ${message}`, { cause: error });
  }
  if (stat(path)?.isDirectory()) throw new StorageError(`${path} is a folder, not a file`, { kind: 'damaged' });
  for (const file of [path, `${path}-wal`, `${path}-shm`]) tighten(file);
  try {
    accessSync(path, constants.R_OK | constants.W_OK);
  } catch (error) {
    throw new StorageError(`the SQLite file may not be written: ${(error as Error).message}`, { cause: error });
  }
}

function tighten(file: string): void {
  const mode = stat(file)?.mode;
  if (mode === undefined || (mode & 0o077) === 0) return;
  try {
    chmodSync(file, PRIVATE);
  } catch {
    // Another user's file refuses the change; using it will show whether it is accessible.
  }
}

/** @param path A file that a connection has opened already. */
export function watchFile(path: string): SqliteFile {
  const log = `${path}-wal`;
  const reserve = `${path}-reserve`;
  const files = [path, log].map((file) => ({ file, opened: stat(file) }));
  const watched: SqliteFile = {
    requireSame() {
      for (const { file, opened } of files) {
        const now = stat(file);
        if (now && now.ino === opened?.ino && now.dev === opened.dev) continue;
        throw new StorageError(
          `${file} ${now ? 'was replaced' : 'is gone'} while the service had it open; put it back if you can, and restart the service`,
          { kind: 'damaged' },
        );
      }
    },
    logBytes: () => stat(log)?.size ?? 0,
    requireRoom() {
      const { blocks, bavail, bsize } = statfsSync(dirname(path));
      // Some file systems do not report their size.
      if (blocks === 0 || bavail * bsize >= MIN_FREE_BYTES) return;
      throw new StorageError(`the disk of ${path} is full`, { kind: 'full' });
    },
    releaseReserve: () => rmSync(reserve, { force: true }),
    isReleased: () => stat(reserve) === undefined,
    fillReserve() {
      const missing = RESERVE_BYTES - (stat(reserve)?.size ?? 0);
      if (missing <= 0) return;
      try {
        const file = openSync(reserve, 'a', PRIVATE);
        try {
          // Random bytes, because a compressing file system would not reserve space for zeros.
          writeSync(file, randomBytes(missing));
        } finally {
          closeSync(file);
        }
      } catch {
        // Too little space now; the next deletion and the next probe try again.
      }
    },
  };
  watched.fillReserve();
  return watched;
}

function stat(file: string): Stats | undefined {
  try {
    return statSync(file, { throwIfNoEntry: false });
  } catch (error) {
    throw new StorageError(`${file} cannot be looked at: ${(error as Error).message}`, { cause: error });
  }
}
