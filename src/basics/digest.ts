import { createHash, hash } from 'node:crypto';

/** The SHA-256 digest (FIPS 180-4) of texts, in UTF-8, and bytes one after another. */
export function sha256(...parts: readonly (string | Uint8Array)[]): Buffer {
  if (parts.length === 1) return hash('sha256', parts[0]!, 'buffer');
  const all = createHash('sha256');
  for (const part of parts) all.update(part);
  return all.digest();
}

/**
 * The same as base64url.
 *
 * @param chars Length to cut the text to, at 6 bits a character; the full text has 43.
 */
export const digestOf = (content: string | Uint8Array, chars?: number): string =>
  hash('sha256', content, 'base64url').slice(0, chars);

/** The digest of a value's JSON. Equal digests mean equal JSON. */
export const digestOfJson = (value: unknown, chars?: number): string => digestOf(JSON.stringify(value), chars);
