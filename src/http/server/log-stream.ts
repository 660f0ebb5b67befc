import { type DestinationStream, destination } from 'pino';

/** Lines wait so long for others, to be written with them [ms], */
const MAX_DELAY_MS = 50;
/** or until there are so many [bytes]. */
const MIN_WRITE_BYTES = 8192;

/** Standard output, written to in pieces and without waiting: a write for each line costs more than many an answer. */
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
