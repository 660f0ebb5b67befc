import type { FastifyRequest } from 'fastify';
import type { ProblemBody } from '../shell/api.js';
import type { FileGiven } from '../shell/view.js';

/** Maximum size of all fields of a form together, and of its file [bytes]. */
const MAX_FIELDS_BYTES = 2 * 1024 * 1024;
const MAX_FILE_BYTES = 8 * 1024 * 1024;
/** A file up to this size is shown again as text, so that it need not be chosen again [bytes]. */
const MAX_SHOWN_BYTES = 512 * 1024;

export const formLimits = {
  fieldSize: MAX_FIELDS_BYTES,
  fileSize: MAX_FILE_BYTES,
  files: 1,
  fields: 1000,
  parts: 1001,
};

/** A posted form. */
export interface PostedForm {
  readonly said: URLSearchParams;
  /** The file, or the text pasted instead. */
  readonly file: FileGiven | null;
  /** Why some of it could not be read; earlier fields are kept in `said`. */
  readonly problem?: ProblemBody;
}

/** @param how With `isFileWanted: false` a file's bytes are dropped as they arrive. */
export async function readForm(
  request: FastifyRequest,
  { isFileWanted }: { isFileWanted: boolean },
): Promise<PostedForm> {
  const said = new URLSearchParams();
  let file: FileGiven | null = null;
  let bytes = 0;
  try {
    for await (const part of request.parts()) {
      if (part.type === 'file') {
        if (!isFileWanted) {
          part.file.resume();
          continue;
        }
        const body = await part.toBuffer();
        if (body.length > 0) file = { name: part.filename, body, ...again(body) };
        continue;
      }
      const value = String(part.value);
      bytes += Buffer.byteLength(value);
      if (part.valueTruncated || bytes > MAX_FIELDS_BYTES) return { said, file: null, problem: TOO_LARGE };
      said.append(part.fieldname, value);
    }
  } catch (error) {
    const { statusCode } = error as { statusCode?: number };
    return { said, file: null, problem: statusCode === 413 ? TOO_LARGE : CUT_SHORT };
  }
  const pasted = said.get('pasted') ?? '';
  said.delete('pasted');
  if (!file && pasted.trim() !== '') file = { name: '', body: Buffer.from(`${pasted}\n`), text: pasted };
  return { said, file };
}

const TOO_LARGE: ProblemBody = {
  status: 413,
  code: 'form-too-large',
  title: '',
  detail: '',
};
const CUT_SHORT: ProblemBody = {
  status: 400,
  code: 'cut-short',
  title: '',
  detail: '',
};

/** The text to show again, if the file is short and UTF-8. */
function again(body: Buffer): { readonly text?: string } {
  if (body.length > MAX_SHOWN_BYTES) return {};
  try {
    return { text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: false }).decode(body) };
  } catch {
    return {};
  }
}
