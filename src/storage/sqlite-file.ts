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
import { StorageError } from '../garden/store/storage-error.js';

/**
 * Bytes held in a file of their own beside the database. On a full disk they are released so that something can be
 * deleted: SQLite writes the pages that a deletion changes to its log before it frees any. More than the log may hold
 * between two checkpoints and one large upload (4 MB of JSON keeps 1.3 MB) make it grow by.
 */
const RESERVE_BYTES = 4 * 1024 * 1024;
/** Where the disk has less room than this [bytes], what is commonly written would not fit. */
const MIN_FREE_BYTES = 1024 * 1024;
const PRIVATE = 0o600;

/** A database file on its disk, as much of it as SQLite does not see to itself. */
export interface SqliteFile {
  /** @throws StorageError where the file was removed or replaced since it was opened. */
  requireSame(): void;
  /** How long the log is by now [bytes]. */
  logBytes(): number;
  /** @throws StorageError where the disk has hardly any room. */
  requireRoom(): void;
  /** Makes room on a full disk. */
  releaseReserve(): void;
  isReleased(): boolean;
  /** Takes the room again, as much of it as there is. */
  fillReserve(): void;
}

/** Makes the file where there is none, for its owner's eyes only; SQLite gives its log the same mode. */
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
    // A file of another user's cannot be tightened by us; whether it may be used shows when it is.
  }
}

/** @param path A file that a connection has open already. */
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
      // Some file systems do not say how large they are.
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
          // Chance is not packed by a file system that packs.
          writeSync(file, randomBytes(missing));
        } finally {
          closeSync(file);
        }
      } catch {
        // There is no room for it now; it is tried again after the next deletion and before the next probe.
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
