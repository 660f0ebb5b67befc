import type { fileReader } from '../read-file.js';
import type { FileRead } from './rows-read.js';

/** Others are answered after so much of a file. */
const PIECE_BYTES = 64 * 1024;

/**
 * Reads a file as its bytes arrive, with pauses in between.
 *
 * @param reader A reader that has read nothing yet.
 * @param bytes  The file in order, in parts of any size.
 * @param pause  Lets others have their turn.
 * @throws {RequestError} as soon as the file proves unreadable or asks something; the rest is not waited for.
 */
export async function readInPieces(
  reader: ReturnType<typeof fileReader>,
  bytes: Iterable<Uint8Array> | AsyncIterable<Uint8Array>,
  pause: () => Promise<unknown>,
): Promise<FileRead> {
  for await (const part of bytes) {
    for (let from = 0; from < part.length; from += PIECE_BYTES) {
      reader.push(part.subarray(from, from + PIECE_BYTES));
      await pause();
    }
  }
  const rest = reader.finish();
  for (;;) {
    const { done, value } = rest.next();
    if (done) return value;
    await pause();
  }
}
