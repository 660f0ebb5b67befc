import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { textReader } from '../../../src/readings/text/encoding.js';
import { unifyLineEnds } from '../../../src/readings/text/line-ends.js';

/** Reads bytes in pieces cut at these places. */
function readInPieces(bytes: Buffer, cuts: readonly number[]): { text: string; encoding: string } {
  const reader = textReader(bytes);
  const places = [...new Set(cuts.map((cut) => cut % (bytes.length + 1)))].sort((a, b) => a - b);
  let text = '';
  let from = 0;
  for (const to of places) {
    text += reader.read(bytes.subarray(from, to), false);
    from = to;
  }
  text += reader.read(bytes.subarray(from), true);
  return { text, encoding: reader.encoding() };
}

const swap = (bytes: Buffer): Buffer => Buffer.from(bytes).swap16();

describe('textReader', () => {
  const text = 'time;Temperatur °C;Höhe\n2027-05-01 10:00;12,5;Ž\n';

  it('tells UTF-8, UTF-16 of both kinds and one-byte files apart, with a mark and without', () => {
    const kinds: [Buffer, string, string][] = [
      [Buffer.from(text), text, 'utf-8'],
      [Buffer.from(`\ufeff${text}`), text, 'utf-8'],
      [Buffer.from(`\ufeff${text}`, 'utf16le'), text, 'utf-16le'],
      [swap(Buffer.from(`\ufeff${text}`, 'utf16le')), text, 'utf-16be'],
      [Buffer.from(text, 'utf16le'), text, 'utf-16le'],
      [Buffer.from('Temperatur °C\n1\n', 'latin1'), 'Temperatur °C\n1\n', 'windows-1252'],
    ];
    for (const [bytes, expected, encoding] of kinds)
      expect(readInPieces(bytes, [])).toEqual({ text: expected, encoding });
  });

  it('reads the same however the bytes are cut', () => {
    const kinds = [Buffer.from(text), Buffer.from(`\ufeff${text}`, 'utf16le'), Buffer.from(text, 'latin1')];
    fc.assert(
      fc.property(fc.constantFrom(...kinds), fc.array(fc.nat(200), { maxLength: 8 }), (bytes, cuts) => {
        expect(readInPieces(bytes, cuts).text).toBe(readInPieces(bytes, []).text);
      }),
    );
  });

  it('keeps to UTF-8 where one byte of many signs is spoilt', () => {
    const bytes = Buffer.from('time,°C\n'.repeat(20));
    bytes[bytes.length - 4] = 0xff;
    expect(readInPieces(bytes, []).encoding).toBe('utf-8');
  });

  it('refuses archives, pictures and other bytes that are no text, and says what they are', () => {
    const refusals: [Buffer, RegExp][] = [
      [Buffer.from([0x50, 0x4b, 3, 4, 20, 0]), /not-csv.packed .*zip/],
      [Buffer.from([0x1f, 0x8b, 8, 0]), /not-csv.packed .*gzip/],
      [Buffer.from([0x89, 0x50, 0x4e, 0x47]), /not-csv.packed .*picture/],
      [Buffer.from(Array.from({ length: 512 }, (_, i) => i % 32)), /not-csv.not-text/],
    ];
    for (const [bytes, words] of refusals) expect(() => textReader(bytes)).toThrow(words);
  });
});

describe('unifyLineEnds', () => {
  it('makes every kind of line end one, however the text is cut', () => {
    const text = 'a\r\nb\rc\nd\r\r\ne\r\n\r\nf';
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(text.length), (a, b) => {
        const [first, second] = [Math.min(a, b), Math.max(a, b)];
        const unify = unifyLineEnds();
        const pieces =
          unify(text.slice(0, first), false) +
          unify(text.slice(first, second), false) +
          unify(text.slice(second), true);
        expect(pieces).toBe('a\nb\nc\nd\ne\n\nf');
      }),
    );
  });
});
