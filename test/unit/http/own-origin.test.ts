import { describe, expect, test } from 'vitest';
import { isSameOrigin } from '../../../src/contract/request/same-origin.js';

/** Asked of quillmere.example, unless another host is named. */
const own = (origin: string | undefined, site?: string, host = 'quillmere.example') =>
  isSameOrigin({
    host,
    headers: {
      ...(origin === undefined ? {} : { origin }),
      ...(site === undefined ? {} : { 'sec-fetch-site': site }),
    },
  });

describe('a request is of our own pages, or of no page', () => {
  test.each([
    ['where nothing is said of it, as by a program', undefined, undefined],
    ['where the reader typed the address', undefined, 'none'],
    ['where the browser says so', undefined, 'same-origin'],
    ['from the same host', 'http://quillmere.example', undefined],
    ['from the same host, behind what speaks https for us', 'https://quillmere.example', 'same-origin'],
    ['from the same host with its usual port named', 'https://quillmere.example:443', undefined],
    ['from the same host in capitals', 'HTTP://QUILLMERE.EXAMPLE', undefined],
    ['from a page that hides where it is, by the browser’s word', 'null', 'same-origin'],
  ])('%s', (_, origin, site) => expect(own(origin, site)).toBe(true));

  test('at any port, if it is the same, and the usual ones need not be named', () => {
    expect(own('http://127.0.0.1:8080', undefined, '127.0.0.1:8080')).toBe(true);
    expect(own('http://[::1]:8080', undefined, '[::1]:8080')).toBe(true);
    expect(own('http://quillmere.example', undefined, 'quillmere.example:80')).toBe(true);
  });
});

describe('a request is foreign', () => {
  test.each([
    ['from another host', 'http://elsewhere.example', undefined],
    ['from another name under the same one', 'http://shed.quillmere.example', undefined],
    ['from a name that begins alike', 'http://quillmere.example.elsewhere.example', undefined],
    ['from another port', 'http://quillmere.example:8081', undefined],
    ['from a page that hides where it is', 'null', undefined],
    ['from a page that hides where it is, on another site', 'null', 'cross-site'],
    ['where the browser calls it another site', undefined, 'cross-site'],
    ['where the browser calls it a neighbour', undefined, 'same-site'],
    ['where the browser calls it another site, whatever the origin', 'http://quillmere.example', 'cross-site'],
    ['from another host, whatever else is said', 'http://elsewhere.example', 'same-origin'],
    ['from a program in the browser', 'chrome-extension://quillmere.example', undefined],
    ['from what is no address', 'http://', undefined],
    ['from nowhere', '', undefined],
    ['from two origins at once', 'http://quillmere.example, http://elsewhere.example', undefined],
  ])('%s', (_, origin, site) => expect(own(origin, site)).toBe(false));

  test.each(['', 'a b', ':', 'quillmere.example:99999'])('where the host is no host: "%s"', (host) => {
    expect(own('http://quillmere.example', undefined, host)).toBe(false);
  });
});
