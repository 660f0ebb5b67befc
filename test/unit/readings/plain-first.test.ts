import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainFirst } from '../../../src/readings/text/plain-first.js';

/** Hands a text on in pieces; lines that begin with `p` are plain. What came to each side, in order. */
function handOn(text: string, pieceBytes: number): { all: string; asText: string; asPlain: string } {
  const seen = { all: '', asText: '', asPlain: '' };
  const hand = plainFirst(
    (bytes, from, end) => {
      let at = from;
      while (at < end && bytes[at] === 'p'.charCodeAt(0)) at = bytes.indexOf(10, at) + 1;
      const plain = Buffer.from(bytes.subarray(from, at)).toString('latin1');
      seen.asPlain += plain;
      seen.all += plain;
      return at;
    },
    (bytes) => {
      const rest = Buffer.from(bytes).toString('latin1');
      seen.asText += rest;
      seen.all += rest;
    },
  );
  const bytes = Buffer.from(text, 'latin1');
  for (let at = 0; at < bytes.length; at += pieceBytes) hand(bytes.subarray(at, at + pieceBytes));
  return seen;
}

const line = fc.constantFrom('p 12.5\n', 'p 12.25\r\n', 'odd\n', '\n', 'p\xb0\n', 'caf\xe9\n');

describe('plainFirst', () => {
  it('hands on every byte once and in order, and only whole lines as plain', () => {
    fc.assert(
      fc.property(fc.array(line, { maxLength: 60 }), fc.integer({ min: 1, max: 80 }), (lines, pieceBytes) => {
        const text = lines.join('').slice(0, -1);
        const { all, asPlain } = handOn(text, pieceBytes);
        expect(all).toBe(text);
        expect(asPlain).toMatch(/^(?:p[^\n]*\n)*$/);
      }),
    );
  });

  it('finds plain lines again after odd ones', () => {
    const plain = 'p 12.5\n'.repeat(1000);
    expect(handOn(`x\n${plain}odd\n${plain}`, 4096).asText.length).toBeLessThan(200);
  });

  it('tries fewer and fewer times where nothing is plain', () => {
    let tries = 0;
    const hand = plainFirst(
      (_, from) => {
        tries++;
        return from;
      },
      () => {},
    );
    for (let piece = 0; piece < 20; piece++) hand(Buffer.from('odd\n'.repeat(5000)));
    expect(tries).toBeLessThan(40);
  });

  it('gives the rest of a piece to the way of text where a line is beyond ASCII, as its encoding shows in all of it', () => {
    const plain = 'p 12.5\n'.repeat(10);
    expect(handOn(`x\n${plain}caf\xe9\n${plain}`, 4096)).toMatchObject({ asPlain: plain });
  });
});
