import type { z } from 'zod';
import { sourceFact } from '../garden/store/connection-facts.js';
import { SourceError } from './source-error.js';

export type AnswerForm = 'archive' | 'grid' | 'observations' | 'datastream' | 'columns' | 'timeseries' | 'point';

/** Parsing a longer answer would block all other requests. */
const MAX_BYTES = 8 * 1024 * 1024;

/**
 * Parses a JSON answer and checks its shape.
 *
 * @param form Name of that shape in the error.
 * @throws {SourceError} when it is not JSON or has another shape.
 */
export function jsonAnswer<T>(bytes: Uint8Array, schema: z.ZodType<T>, form: AnswerForm): T {
  if (bytes.length > MAX_BYTES)
    throw new SourceError(sourceFact('source.too-large', { megabytes: MAX_BYTES / 1024 / 1024 }));
  const text = new TextDecoder().decode(bytes);
  if (text.trim() === '') throw new SourceError(sourceFact('source.empty'));
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    const isPage = /^\s*<(?:!doctype|html|\?xml|head|body)/i.test(text);
    throw new SourceError(sourceFact('source.not-json', { isPage: isPage ? 'yes' : 'no' }));
  }
  const read = schema.safeParse(value);
  if (read.success) return read.data;
  const [first] = read.error.issues;
  const at = first && first.path.length > 0 ? first.path.join('.') : null;
  throw new SourceError(sourceFact('source.not-form', { form, at }));
}
