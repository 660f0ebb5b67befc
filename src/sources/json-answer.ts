import type { z } from 'zod';
import { SourceError } from './source-error.js';

/** Longer answers would hold up everybody while they are read. */
const MOST_BYTES = 8 * 1024 * 1024;

/**
 * An answer in JSON, of the shape that it should have.
 *
 * @param form What the shape is called, to go on from "The answer is not ".
 * @throws {SourceError} where it is not JSON, or of another shape.
 */
export function jsonAnswer<T>(bytes: Uint8Array, schema: z.ZodType<T>, form: string): T {
  if (bytes.length > MOST_BYTES) throw new SourceError('The answer of the source is longer than 8 MB of JSON.');
  const text = new TextDecoder().decode(bytes);
  if (text.trim() === '') throw new SourceError('The answer of the source is empty.');
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    const isPage = /^\s*<(?:!doctype|html|\?xml|head|body)/i.test(text);
    throw new SourceError(
      isPage ? 'The source answered with a web page instead of JSON.' : 'The answer of the source is not JSON.',
    );
  }
  const read = schema.safeParse(value);
  if (read.success) return read.data;
  const [first] = read.error.issues;
  const at = first && first.path.length > 0 ? ` (at ${first.path.join('.')})` : '';
  throw new SourceError(`The answer of the source is not ${form}${at}.`);
}
