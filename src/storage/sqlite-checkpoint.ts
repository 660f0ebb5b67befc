import { StorageError } from '../garden/store/storage-error.js';
import type { Connection } from './sqlite-connection.js';
import type { SqliteFile } from './sqlite-file.js';

/**
 * When the log is carried into the file: soon after a commit [ms], or, in a storm of commits, at this length [bytes]. A
 * short log is carried over within milliseconds, and a copy of the file alone lacks little.
 */
const CHECKPOINT_AFTER_MS = 1_000;
const CHECKPOINT_BYTES = 1024 * 1024;

/**
 * Carries the log into the file and empties it. Another process that reads, or a full disk, may keep it from doing so;
 * nothing is lost then, and the next checkpoint does it.
 */
export function checkpoint(writer: Connection): void {
  try {
    writer.all('PRAGMA wal_checkpoint(TRUNCATE)', []);
  } catch (error) {
    if (!(error instanceof StorageError)) throw error;
  }
}

/** Plans checkpoints, so that many commits have one. */
export interface Checkpoints {
  plan(): void;
  stop(): void;
}

/** @param inTurn Makes one between two transactions. */
export function checkpoints(writer: Connection, file: SqliteFile, inTurn: (make: () => void) => void): Checkpoints {
  let isStopped = false;
  let planned: NodeJS.Timeout | undefined;
  return {
    plan() {
      const isLong = file.logBytes() >= CHECKPOINT_BYTES;
      if (planned && !isLong) return;
      clearTimeout(planned);
      const due = () => {
        planned = undefined;
        inTurn(() => {
          if (!isStopped) checkpoint(writer);
        });
      };
      planned = setTimeout(due, isLong ? 0 : CHECKPOINT_AFTER_MS).unref();
    },
    stop() {
      clearTimeout(planned);
      isStopped = true;
    },
  };
}
