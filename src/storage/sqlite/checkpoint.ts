import { StorageError } from '../../garden/store/storage-error.js';
import type { Connection } from './connection.js';
import type { SqliteFile } from './file.js';

/**
 * Time of a checkpoint: soon after a commit [ms], or, under many commits, at this length of the log [bytes]. A
 * short log is copied within milliseconds, and a copy of the file alone lacks little.
 */
const CHECKPOINT_AFTER_MS = 1_000;
const CHECKPOINT_BYTES = 1024 * 1024;

/**
 * Copies the log into the file and empties it. A reading process or a full disk may prevent that; nothing is lost then,
 * and the next checkpoint does it.
 */
export function checkpoint(writer: Connection): void {
  try {
    writer.all('PRAGMA wal_checkpoint(TRUNCATE)', []);
  } catch (error) {
    if (!(error instanceof StorageError)) throw error;
  }
}

/** Plans checkpoints, so that many commits share one. */
export interface Checkpoints {
  plan(): void;
  stop(): void;
}

/** @param inTurn Runs a checkpoint between two transactions. */
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
