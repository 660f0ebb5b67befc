import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';
import { rangesOf } from './content-negotiation.js';

export type Coding = 'br' | 'gzip';
/** The better coding first: it wins if a caller accepts both equally. */
const codings: readonly Coding[] = ['br', 'gzip'];

/** A smaller body hardly shrinks when compressed [bytes]. */
const MIN_PACKED_BYTES = 1024;

/** True if a body is worth compressing. */
export const isWorthPacking = (body: string | Buffer): boolean => Buffer.byteLength(body) >= MIN_PACKED_BYTES;

/** The coding that a caller prefers; undefined: none (RFC 9110, 12.5.3). */
export function codingFor(acceptEncoding: string | undefined): Coding | undefined {
  if (acceptEncoding === undefined) return undefined;
  const ranges = rangesOf(acceptEncoding);
  const qualityOf = (coding: string): number => {
    const named = ranges.filter(({ type }) => type === coding);
    const meant = named.length > 0 ? named : ranges.filter(({ type }) => type === '*');
    return Math.max(0, ...meant.map(({ quality }) => quality));
  };
  const best = Math.max(...codings.map(qualityOf));
  return best > 0 ? codings.find((coding) => qualityOf(coding) === best) : undefined;
}

/**
 * `small`: for a body compressed once and sent often; above these levels JSON hardly shrinks and takes twice the time.
 * `fast`: for a body compressed for one request.
 */
const EFFORTS = {
  small: { brotliQuality: 5, gzipLevel: 6 },
  fast: { brotliQuality: 1, gzipLevel: 1 },
} as const;

/** Compresses a body on another thread. */
export function pack(body: Buffer, coding: Coding, effort: keyof typeof EFFORTS): Promise<Buffer> {
  const { brotliQuality, gzipLevel } = EFFORTS[effort];
  if (coding === 'gzip') return zipped(body, { level: gzipLevel });
  return brotli(body, {
    params: {
      [constants.BROTLI_PARAM_QUALITY]: brotliQuality,
      [constants.BROTLI_PARAM_MODE]: constants.BROTLI_MODE_TEXT,
      [constants.BROTLI_PARAM_SIZE_HINT]: body.length,
    },
  });
}

const brotli = promisify(brotliCompress) as (body: Buffer, options: object) => Promise<Buffer>;
const zipped = promisify(gzip) as (body: Buffer, options: object) => Promise<Buffer>;
