import { RequestError } from '../../basics/errors.js';
import { readingsRefusal, type readingsRefusalFacts } from '../readings-facts.js';

export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

/** Turns the bytes of a file into text as they come. */
export interface TextReader {
  /** Encoding found so far. */
  encoding(): Encoding;
  /** ASCII is written as itself. */
  readonly hasAscii: boolean;
  /** The text of the next bytes; with `isLast`, of all that is left. */
  read(bytes: Uint8Array, isLast: boolean): string;
}

type Packed = (typeof readingsRefusalFacts)['not-csv.packed']['kind'][number];

/** First bytes of files that are no text, and their kinds. */
const signatures: readonly (readonly [bytes: readonly number[], kind: Packed])[] = [
  [[0x50, 0x4b, 0x03, 0x04], 'zip'],
  [[0x1f, 0x8b], 'gzip'],
  [[0x42, 0x5a, 0x68], 'bzip2'],
  [[0xfd, 0x37, 0x7a, 0x58, 0x5a], 'xz'],
  [[0x37, 0x7a, 0xbc, 0xaf], '7z'],
  [[0x52, 0x61, 0x72, 0x21], 'rar'],
  [[0xd0, 0xcf, 0x11, 0xe0], 'spreadsheet'],
  [[0x25, 0x50, 0x44, 0x46], 'pdf'],
  [[0x53, 0x51, 0x4c, 0x69, 0x74, 0x65], 'database'],
  [[0x89, 0x50, 0x4e, 0x47], 'picture'],
  [[0xff, 0xd8, 0xff], 'picture'],
];
/** A text has next to no control characters. */
const MAX_CONTROL_SHARE = 0.02;
const SNIFFED_BYTES = 4096;

/**
 * A reader for a file that begins with these bytes.
 *
 * @throws {RequestError} `not-csv` where they are an archive, a picture or other bytes that are no text.
 */
export function textReader(head: Uint8Array): TextReader {
  const kind = signatures.find(([bytes]) => bytes.every((byte, i) => head[i] === byte))?.[1];
  if (kind) throw new RequestError('not-csv', readingsRefusal('not-csv.packed', { kind }));
  const wide = wideEncodingOf(head);
  if (wide) return wideReader(wide);
  const sniffed = head.subarray(0, SNIFFED_BYTES);
  const controls = sniffed.reduce((count, byte) => count + (isControl(byte) ? 1 : 0), 0);
  if (controls > MAX_CONTROL_SHARE * sniffed.length) {
    throw new RequestError('not-csv', readingsRefusal('not-csv.not-text'));
  }
  return narrowReader();
}

const isControl = (byte: number): boolean => byte < 0x20 && byte !== 0x09 && byte !== 0x0a && byte !== 0x0d;

/** UTF-16 shows by its mark, or by every other byte being nought. */
function wideEncodingOf(head: Uint8Array): 'utf-16le' | 'utf-16be' | undefined {
  if (head[0] === 0xff && head[1] === 0xfe) return 'utf-16le';
  if (head[0] === 0xfe && head[1] === 0xff) return 'utf-16be';
  const sniffed = head.subarray(0, SNIFFED_BYTES);
  const pairs = sniffed.length >> 1;
  if (pairs < 4) return undefined;
  const noughts = [0, 0];
  for (let i = 0; i < 2 * pairs; i++) if (sniffed[i] === 0) noughts[i & 1]!++;
  if (noughts[1]! > 0.7 * pairs && noughts[0] === 0) return 'utf-16le';
  if (noughts[0]! > 0.7 * pairs && noughts[1] === 0) return 'utf-16be';
  return undefined;
}

function wideReader(encoding: 'utf-16le' | 'utf-16be'): TextReader {
  const decoder = new TextDecoder(encoding);
  return {
    encoding: () => encoding,
    hasAscii: false,
    read: (bytes, isLast) => decoder.decode(bytes, { stream: !isLast }),
  };
}

/**
 * UTF-8 until a byte disproves it, then Windows-1252, which holds Latin-1 and whose degree sign is that of its sisters.
 * A file that has shown real UTF-8 before stays that: the byte is a slip.
 */
function narrowReader(): TextReader {
  const strict = new TextDecoder('utf-8', { fatal: true });
  const lenient = new TextDecoder('utf-8');
  const oneByte = new TextDecoder('windows-1252');
  let encoding: Encoding = 'utf-8';
  let hasShownUtf8 = false;
  let held = new Uint8Array(0);
  const decode = (bytes: Uint8Array): string => {
    if (encoding === 'windows-1252') return oneByte.decode(bytes);
    try {
      const text = strict.decode(bytes);
      hasShownUtf8 ||= text.length < bytes.length;
      return text;
    } catch {
      const text = lenient.decode(bytes);
      const slips = text.split('\ufffd').length - 1;
      if (hasShownUtf8 || beyondAscii(text) > 2 * slips) return text;
      encoding = 'windows-1252';
      return oneByte.decode(bytes);
    }
  };
  return {
    encoding: () => encoding,
    hasAscii: true,
    read(bytes, isLast) {
      const all = held.length > 0 ? joined(held, bytes) : bytes;
      const whole = isLast ? all.length : all.length - openBytes(all);
      held = all.slice(whole);
      return decode(all.subarray(0, whole));
    },
  };
}

const beyondAscii = (text: string): number => text.match(/[\u0080-\uffff]/g)?.length ?? 0;

function joined(first: Uint8Array, second: Uint8Array): Uint8Array<ArrayBuffer> {
  const both = new Uint8Array(first.length + second.length);
  both.set(first);
  both.set(second, first.length);
  return both;
}

/** Number of bytes at the end that begin an incomplete character. */
function openBytes(bytes: Uint8Array): number {
  for (let back = 1; back <= Math.min(3, bytes.length); back++) {
    const byte = bytes[bytes.length - back]!;
    if (byte < 0x80) return 0;
    if (byte >= 0xc0) return back < (byte >= 0xf0 ? 4 : byte >= 0xe0 ? 3 : 2) ? back : 0;
  }
  return 0;
}
