import type { Readable } from 'node:stream';
import { setImmediate as pause } from 'node:timers/promises';
import type { FastifyRequest } from 'fastify';
import type { Zone } from '../../basics/calendar.js';
import { RequestError } from '../../basics/errors.js';
import { FILE_LIMIT_BYTES } from '../../contract/request/file-limit.js';
import { requestRefusal } from '../../contract/request/refusal-facts.js';
import { fileReader } from '../../readings/read-file.js';
import { readInPieces } from '../../readings/text/read-in-pieces.js';
import type { FileHints, FileRead } from '../../readings/text/rows-read.js';

/**
 * Reads the file of a request as it arrives.
 *
 * @throws {RequestError} as soon as the file proves unreadable, too large or ambiguous, without waiting for the rest.
 */
export async function readFileBody(
  request: FastifyRequest,
  hints: FileHints,
  zone: Zone | undefined,
): Promise<FileRead> {
  const announced = Number(request.headers['content-length'] ?? 0);
  if (announced > FILE_LIMIT_BYTES) throw tooLarge();
  return readInPieces(fileReader(hints, zone, announced), withinLimit(request.body as Readable), pause);
}

async function* withinLimit(body: Readable): AsyncGenerator<Uint8Array> {
  let received = 0;
  for await (const bytes of unbroken(body)) {
    received += bytes.length;
    if (received > FILE_LIMIT_BYTES) throw tooLarge();
    yield bytes;
  }
}

/** The pieces of a body. A file refused halfway must not close the connection before the refusal is sent. */
async function* unbroken(body: Readable): AsyncGenerator<Uint8Array> {
  const pieces = body.iterator({ destroyOnReturn: false });
  try {
    for (;;) {
      const next = await pieces.next().catch((error) => {
        if (error instanceof RequestError) throw error;
        throw new RequestError('bad-request', requestRefusal('bad-request.broken-off'));
      });
      if (next.done) return;
      yield next.value;
    }
  } finally {
    await pieces.return?.();
  }
}

const tooLarge = (): RequestError => new RequestError('too-large', requestRefusal('too-large.file'));
