import { describe, expect, test } from 'vitest';
import { digestOf, digestOfJson, sha256 } from '../../../src/basics/digest.js';

// The examples of FIPS 180-4 (SHA256.pdf of its examples): one block, and two.
const ONE = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
const TWO = '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1';
const LONG = 'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq';

describe('a digest', () => {
  test('is SHA-256, of texts and bytes in whatever parts they come', () => {
    expect(sha256('abc').toString('hex')).toBe(ONE);
    expect(sha256('a', Buffer.from('b'), '', 'c').toString('hex')).toBe(ONE);
    expect(sha256(LONG).toString('hex')).toBe(TWO);
  });

  test('is written as base64url, whole or in its first characters', () => {
    const whole = Buffer.from(ONE, 'hex').toString('base64url');
    expect(digestOf('abc')).toBe(whole);
    expect(digestOf(Buffer.from('abc'), 12)).toBe(whole.slice(0, 12));
  });

  test('of a value is that of its JSON', () => {
    expect(digestOfJson({ a: [1, null] }, 22)).toBe(digestOf('{"a":[1,null]}', 22));
  });
});
