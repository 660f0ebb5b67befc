import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { isPublicAddress } from '../../../src/egress/public-address.js';
import { type Fetcher, type FetcherSettings, redirectedTo, sourceFetcher } from '../../../src/sources/fetch-source.js';
import { answerWithoutEnd, closedAfterEach, serve } from '../egress/servers.js';
import { inPlainWords } from '../words/say-plainly.js';

const { open, server } = closedAfterEach();

/** A fetcher that may ask 127.0.0.1 alone, with short limits. */
function fetcherWith(settings: Partial<FetcherSettings> = {}): Fetcher {
  const fetcher = sourceFetcher({
    userAgent: 'germination-forecaster/0.0.0-test',
    isAllowed: (address) => address === '127.0.0.1',
    random: () => 0.5,
    ...settings,
    limits: { firstPauseMs: 2, longestPauseMs: 40, ...settings.limits },
  });
  open.push(fetcher);
  return { ...fetcher, ask: (url, options) => inPlainWords(fetcher.ask(url, options)) };
}

const textOf = (bytes: Uint8Array | null): string => Buffer.from(bytes ?? []).toString();
const never = (): void => {};

describe('a source is asked', () => {
  test('with the name of the project, and answers in full', async () => {
    const { url, asked } = await server((_, response) => response.setHeader('etag', '"a"').end('days'));
    const answer = await fetcherWith().ask(new URL(url));
    expect([textOf(answer.bytes), answer.etag]).toEqual(['days', '"a"']);
    expect(asked[0]!.headers['user-agent']).toBe('germination-forecaster/0.0.0-test');
  });

  test('whether anything has changed since, and nothing is read where nothing has', async () => {
    const lastModified = 'Sat, 01 May 2027 06:00:00 GMT';
    const { url, asked } = await server((request, response) => {
      const known = request.headers['if-none-match'] === '"a"';
      response.writeHead(known ? 304 : 200, { etag: '"a"', 'last-modified': lastModified }).end(known ? '' : 'days');
    });
    const fetcher = fetcherWith();
    const first = await fetcher.ask(new URL(url));
    const second = await fetcher.ask(new URL(url), { previous: first });
    expect(second).toEqual({ bytes: null, etag: '"a"', lastModified });
    expect(asked[1]!.headers['if-modified-since']).toBe(lastModified);
  });

  test('and a "not modified" that nobody asked for is no answer', async () => {
    const { url } = await server((_, response) => response.writeHead(304).end());
    await expect(fetcherWith().ask(new URL(url))).rejects.toThrow('status 304');
  });

  test('for gzip, on the way and as the file itself', async () => {
    const { url } = await server((request, response) => {
      const file = gzipSync('days');
      if (request.url === '/file.gz') response.end(file);
      else response.setHeader('content-encoding', 'gzip').end(request.url === '/both' ? gzipSync(file) : file);
    });
    for (const path of ['/file.gz', '/way', '/both']) {
      expect(textOf((await fetcherWith().ask(new URL(path, url))).bytes), path).toBe('days');
    }
  });
});

describe('a source that is in trouble is asked again', () => {
  test('after 500, and after a broken connection', async () => {
    const { url, asked } = await server((request, response) => {
      if (asked.length === 1) response.writeHead(500).end();
      else if (asked.length === 2) request.socket.destroy();
      else response.end('days');
    });
    expect(textOf((await fetcherWith().ask(new URL(url))).bytes)).toBe('days');
    expect(asked).toHaveLength(3);
  });

  test('three times in all, and then told of', async () => {
    const { url, asked } = await server((_, response) => response.writeHead(503).end());
    await expect(fetcherWith().ask(new URL(url))).rejects.toThrow('status 503: it is in trouble itself');
    expect(asked).toHaveLength(3);
  });

  test('after pauses drawn from 0 to ever more', async () => {
    const { url } = await server((_, response) => response.writeHead(503).end());
    const draws: number[] = [];
    const random = () => draws.push(0) && 1;
    const before = performance.now();
    const fetcher = fetcherWith({ random, limits: { firstPauseMs: 60, longestPauseMs: 1000 } });
    await expect(fetcher.ask(new URL(url))).rejects.toThrow();
    expect(performance.now() - before).toBeGreaterThanOrEqual(178);
    expect(draws).toHaveLength(2);
  });

  test('after 429 when it wishes, where that is soon, and else not before its time', async () => {
    const { url, asked } = await server((request, response) => {
      const soon = request.url === '/soon';
      if (soon && asked.length > 1) response.end('days');
      else response.writeHead(429, { 'retry-after': soon ? '0' : '3600' }).end();
    });
    expect(textOf((await fetcherWith().ask(new URL('/soon', url))).bytes)).toBe('days');
    const before = asked.length;
    const later = fetcherWith().ask(new URL('/later', url));
    await expect(later).rejects.toMatchObject({
      message: expect.stringContaining('429') as string,
      retryAfterMs: 3.6e6,
    });
    expect(asked).toHaveLength(before + 1);
  });

  test('at a date that it names by its own clock', async () => {
    const { url } = await server((_, response) => {
      const date = 'Sat, 01 May 2027 06:00:00 GMT';
      response.writeHead(503, { date, 'retry-after': 'Sat, 01 May 2027 08:00:00 GMT' }).end();
    });
    await expect(fetcherWith().ask(new URL(url))).rejects.toMatchObject({ retryAfterMs: 7.2e6 });
  });

  test.each([404, 403, 400, 204])('but not after %i', async (status) => {
    const { url, asked } = await server((_, response) => response.writeHead(status).end());
    await expect(fetcherWith().ask(new URL(url))).rejects.toThrow(`status ${status}`);
    expect(asked).toHaveLength(1);
  });
});

describe('a source cannot hold the service up', () => {
  const once = { attempts: 1 };

  test('with headers that do not come', async () => {
    const { url } = await server(never);
    const fetcher = fetcherWith({ limits: { ...once, headersMs: 60 } });
    await expect(fetcher.ask(new URL(url))).rejects.toThrow('did not begin to answer within 0.06 s');
  });

  test('with an answer that stops in the middle', async () => {
    const { url } = await server((_, response) => void response.write('da'));
    await expect(fetcherWith({ limits: { ...once, silenceMs: 60 } }).ask(new URL(url))).rejects.toThrow('fell silent');
  });

  test('with an answer that drips', async () => {
    const { url } = await server((_, response) => {
      const timer = setInterval(() => response.write('.'), 10);
      response.on('close', () => clearInterval(timer));
    });
    await expect(fetcherWith({ limits: { ...once, wholeMs: 200 } }).ask(new URL(url))).rejects.toThrow(
      'longer than 0.2 s',
    );
  });

  test('with an answer without end, of which no more is taken than is allowed', async () => {
    const endless = answerWithoutEnd();
    const { url } = await server(endless.answer);
    await expect(fetcherWith({ limits: { maxBytes: 1024 * 1024 } }).ask(new URL(url))).rejects.toThrow(
      'larger than 1 MB',
    );
    expect(endless.sentBytes()).toBeLessThan(2e7);
  });

  test('with an answer that says beforehand that it is huge', async () => {
    const { url } = await server((_, response) =>
      response.writeHead(200, { 'content-length': '99000000000' }).write('x'),
    );
    await expect(fetcherWith().ask(new URL(url))).rejects.toThrow('larger than 32 MB');
  });

  test('with a little gzip that becomes a lot', async () => {
    const bomb = gzipSync(Buffer.alloc(50 * 1024 * 1024));
    const { url } = await server((_, response) => response.setHeader('content-encoding', 'gzip').end(bomb));
    expect(bomb.length).toBeLessThan(100_000);
    await expect(fetcherWith().ask(new URL(url))).rejects.toThrow('larger than 32 MB');
    const { url: twice } = await server((_, response) => response.end(gzipSync(bomb)));
    await expect(fetcherWith().ask(new URL(twice))).rejects.toThrow('larger than 32 MB');
  });

  test('with damaged gzip, another packing, or what is not HTTP', async () => {
    const { url } = await server((request, response) => {
      if (request.url === '/br') response.setHeader('content-encoding', 'br').end('x');
      else if (request.url === '/cut')
        response.setHeader('content-encoding', 'gzip').end(gzipSync('days').subarray(0, 15));
      else request.socket.end('nonsense\r\n\r\n');
    });
    const fetcher = fetcherWith({ limits: once });
    await expect(fetcher.ask(new URL('/br', url))).rejects.toThrow('not asked for');
    await expect(fetcher.ask(new URL('/cut', url))).rejects.toThrow('damaged');
    await expect(fetcher.ask(new URL('/raw', url))).rejects.toThrow('does not answer as HTTP asks');
  });

  test('by resetting the connection, or not listening', async () => {
    const { url } = await server((request) => void request.socket.resetAndDestroy());
    await expect(fetcherWith({ limits: once }).ask(new URL(url))).rejects.toThrow('broke off the connection');
    const gone = await serve(never);
    await gone.close();
    await expect(fetcherWith({ limits: once }).ask(new URL(gone.url))).rejects.toThrow('refused the connection');
  });

  test('when the service stops', async () => {
    const { url } = await server(never);
    const stop = new AbortController();
    const asking = fetcherWith().ask(new URL(url), { signal: stop.signal });
    setTimeout(() => stop.abort(), 30);
    await expect(asking).rejects.toMatchObject({ name: 'AbortError' });
  });
});

describe('a source that sends on', () => {
  test('is followed five times', async () => {
    const { url, asked } = await server((request, response) => {
      const n = Number(request.url!.slice(1));
      if (n === 5) response.end('days');
      else response.writeHead([301, 302, 303, 307, 308][n]!, { location: `/${n + 1}` }).end('moved');
    });
    expect(textOf((await fetcherWith().ask(new URL('/0', url))).bytes)).toBe('days');
    expect(asked).toHaveLength(6);
  });

  test('in a circle is not', async () => {
    const { url, asked } = await server((_, response) => response.writeHead(302, { location: '/' }).end());
    await expect(fetcherWith().ask(new URL(url))).rejects.toThrow('more than 5 times');
    expect(asked).toHaveLength(6);
  });

  test.each([
    'http://127.0.0.2:1/',
    'http://10.0.0.1/',
    'http://169.254.169.254/latest/meta-data/',
    'http://[::1]/',
    'http://[::ffff:127.0.0.1]/',
    'http://2130706434/',
    'http://0x7f.0.0.2/',
  ])('to %s is not followed there', async (location) => {
    const { url, asked } = await server((_, response) => response.writeHead(302, { location }).end());
    await expect(fetcherWith().ask(new URL(url))).rejects.toThrow('not a public address');
    expect(asked).toHaveLength(1);
  });

  test('to another protocol, without encryption or with a password is not followed', () => {
    const from = new URL('https://weather.example/days');
    expect(redirectedTo('../new', from).href).toBe('https://weather.example/new');
    for (const bad of ['http://weather.example/', 'file:///etc/passwd', 'https://a:b@weather.example/', 'https://['])
      expect(() => redirectedTo(bad, from), bad).toThrow();
    expect(redirectedTo('https://weather.example/?a={x}', from).search).toBe('?a={x}');
  });
});

describe('an address that is not public', () => {
  test('is not asked, be it written out or named', async () => {
    const { url, asked } = await server((_, response) => response.end('secret'));
    const { port } = new URL(url);
    const fetcher = fetcherWith({ isAllowed: isPublicAddress });
    for (const host of ['127.0.0.1', '127.1', '2130706433', 'localhost', '0.0.0.0', '[::1]', '[::ffff:7f00:1]']) {
      await expect(fetcher.ask(new URL(`http://${host}:${port}/`)), host).rejects.toThrow('ALLOW_PRIVATE_SOURCES');
    }
    expect(asked).toEqual([]);
  });

  test('among those of a name keeps the whole name out', async () => {
    const { url, asked } = await server((_, response) => response.end('secret'));
    const fetcher = fetcherWith({ resolve: async () => ['127.0.0.1', '10.0.0.1'] });
    await expect(fetcher.ask(new URL(`http://weather.example:${new URL(url).port}/`))).rejects.toThrow('not a public');
    expect(asked).toEqual([]);
  });

  test('is not reached by a name that changes its meaning between the look and the connection', async () => {
    const { url, asked } = await server((_, response) => response.setHeader('connection', 'close').end('days'));
    const answers = [['127.0.0.1'], ['127.0.0.2']];
    const fetcher = fetcherWith({ resolve: async () => answers.shift() ?? [] });
    const named = new URL(`http://weather.example:${new URL(url).port}/`);
    // One look for one connection: the second meaning is only seen, and refused, by the next.
    expect(textOf((await fetcher.ask(named)).bytes)).toBe('days');
    expect(answers).toHaveLength(1);
    await expect(fetcher.ask(named)).rejects.toThrow('not a public address');
    expect(asked.map(({ headers }) => headers.host)).toEqual([named.host]);
  });

  test('is not asked again and again', async () => {
    let looks = 0;
    const fetcher = fetcherWith({ resolve: async () => [`10.0.0.${++looks}`] });
    await expect(fetcher.ask(new URL('http://weather.example/'))).rejects.toThrow('not a public address');
    expect(looks).toBe(1);
  });

  test('with a password, or by another protocol, is refused before anything is looked up', async () => {
    const resolve = () => Promise.reject(new Error('looked up'));
    const fetcher = fetcherWith({ resolve });
    await expect(fetcher.ask(new URL('http://a:b@weather.example/'))).rejects.toThrow('user name');
    await expect(fetcher.ask(new URL('ftp://weather.example/'))).rejects.toThrow('https:// or http://');
  });

  test('is told apart from a name that leads nowhere', async () => {
    const resolve = () => Promise.reject(Object.assign(new Error(), { code: 'ENOTFOUND' }));
    await expect(fetcherWith({ resolve }).ask(new URL('http://weather.example/'))).rejects.toThrow('leads nowhere');
  });
});
