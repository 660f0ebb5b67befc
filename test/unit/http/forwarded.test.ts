import { describe, expect, test } from 'vitest';
import { settleForwarded } from '../../../src/http/server/forwarded.js';

type Headers = Record<string, string>;
const settled = (headers: Headers, isFromProxy = true): Headers => {
  const { forwarded: _, ...rest } = { ...headers };
  const copy: Headers = { ...headers };
  settleForwarded(copy, isFromProxy);
  delete copy.forwarded;
  expect(Object.keys(copy).filter((name) => !name.startsWith('x-'))).toEqual(
    Object.keys(rest).filter((name) => !name.startsWith('x-')),
  );
  return copy;
};

describe('what a proxy says', () => {
  // The examples of RFC 7239, sections 4, 6 and 7.1.
  test.each([
    ['for="_gazonk"', '_gazonk'],
    ['For="[2001:db8:cafe::17]:4711"', '2001:db8:cafe::17'],
    ['for=192.0.2.60;proto=http;by=203.0.113.43', '192.0.2.60'],
    ['for=192.0.2.43, for=198.51.100.17', '192.0.2.43, 198.51.100.17'],
    ['for=192.0.2.43,for="[2001:db8:cafe::17]",for=unknown', '192.0.2.43, 2001:db8:cafe::17, unknown'],
    ['proto=https, for=192.0.2.43:47011', 'unknown, 192.0.2.43'],
    ['for="a,b;host=x"', 'a,b;host=x'],
  ])('by %s is that it comes from %s', (forwarded, callers) => {
    expect(settled({ forwarded })['x-forwarded-for']).toBe(callers);
  });

  test('of host and protocol is what the nearest says', () => {
    const forwarded =
      'for=192.0.2.43;host=elsewhere.example;proto=http, for=198.51.100.17;proto=https;host="garden.example:8443"';
    expect(settled({ forwarded })).toEqual({
      'x-forwarded-for': '192.0.2.43, 198.51.100.17',
      'x-forwarded-host': 'garden.example:8443',
      'x-forwarded-proto': 'https',
    });
  });

  test('is left as it is where it says it by X-Forwarded headers', () => {
    const headers = { host: 'inside', 'x-forwarded-for': '192.0.2.1', 'x-forwarded-proto': 'https' };
    expect(settled(headers)).toEqual(headers);
  });

  test('is believed where both ways agree, and neither where they do not', () => {
    const forwarded = 'for=192.0.2.1;host=garden.example';
    expect(settled({ forwarded, 'x-forwarded-for': '192.0.2.1' })['x-forwarded-host']).toBe('garden.example');
    expect(settled({ forwarded, 'x-forwarded-for': '192.0.2.2', 'x-forwarded-host': 'evil.example' })).toEqual({});
  });

  test('is nothing where it is no proxy of ours, or longer than any way here', () => {
    const headers = {
      host: 'localhost',
      'x-forwarded-for': '192.0.2.1',
      'x-forwarded-host': 'a',
      'x-forwarded-proto': 'https',
    };
    expect(settled({ ...headers, forwarded: 'for=192.0.2.3' }, false)).toEqual({ host: 'localhost' });
    expect(settled({ forwarded: 'for=192.0.2.3,'.repeat(1000) })).toEqual({});
  });
});
