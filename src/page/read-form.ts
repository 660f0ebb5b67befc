import type { FastifyRequest } from 'fastify';
import { RequestError } from '../basics/errors.js';
import type { FileGiven } from './view.js';

/** All fields of a form together, and its file [bytes]. */
const MOST_FIELDS_BYTES = 2 * 1024 * 1024;
const MOST_FILE_BYTES = 8 * 1024 * 1024;
/** A file up to this long is shown again as text, so that it need not be chosen anew [bytes]. */
const MOST_SHOWN_BYTES = 512 * 1024;

export const formLimits = {
  fieldSize: MOST_FIELDS_BYTES,
  fileSize: MOST_FILE_BYTES,
  files: 1,
  fields: 1000,
  parts: 1001,
};

/** A form as it was posted: its texts, and its file or what was pasted instead. */
export async function readForm(request: FastifyRequest): Promise<{ said: URLSearchParams; file: FileGiven | null }> {
  const said = new URLSearchParams();
  let file: FileGiven | null = null;
  let bytes = 0;
  for await (const part of request.parts()) {
    if (part.type === 'file') {
      const body = await part.toBuffer();
      if (body.length > 0) file = { name: part.filename, body, ...again(body) };
      continue;
    }
    const value = String(part.value);
    bytes += value.length;
    if (bytes > MOST_FIELDS_BYTES) throw new RequestError('too-large', TOO_LARGE);
    said.append(part.fieldname, value);
  }
  const pasted = said.get('pasted') ?? '';
  said.delete('pasted');
  if (!file && pasted.trim() !== '') {
    const body = Buffer.from(pasted);
    file = { name: 'what you pasted', body, text: pasted };
  }
  return { said, file };
}

export const TOO_LARGE =
  'The file is larger than a plain form takes, 8 MB. Switch JavaScript on, or send the file to /v1/forecasts.';

/** The text to show again, where the file is short and UTF-8. */
function again(body: Buffer): { readonly text?: string } {
  if (body.length > MOST_SHOWN_BYTES) return {};
  try {
    return { text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: false }).decode(body) };
  } catch {
    return {};
  }
}
