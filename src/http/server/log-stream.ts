import { type DestinationStream, destination } from 'pino';

/** Longest time that lines wait to be written together [ms]. */
const MAX_DELAY_MS = 50;
/** Lines are written at once when they reach this size [bytes]. */
const MIN_WRITE_BYTES = 8192;

/** Standard output, written in pieces and without waiting: a write per line costs more than many an answer. */
export function logStream(): DestinationStream {
  const out = destination({ dest: 1, sync: false, minLength: MIN_WRITE_BYTES });
  let isDue = false;
  const flush = (): void => {
    isDue = false;
    out.flush();
  };
  return {
    write(line) {
      out.write(line);
      if (isDue) return;
      isDue = true;
      setTimeout(flush, MAX_DELAY_MS);
    },
  };
}
