import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { afterEach, describe, expect, test } from 'vitest';
import { keyring } from '../../src/http/keys.js';
import { rateLimit } from '../../src/http/rate-limit.js';
import { openStore } from '../../src/storage/open-store.js';
import { expectProblem, refused } from './bad-request.js';
import { keepQuillmere, lettuceQuestion, linkQueries, NOW, post, startApp } from './helper.js';
import { type OpenApiDocument, operationsOf } from './openapi-arbitraries.js';

const apps: FastifyInstance[] = [];
afterEach(async () => {
  for (const app of apps.splice(0)) await app.close();
});

async function start(options: Parameters<typeof startApp>[0]): Promise<FastifyInstance> {
  const app = await startApp(options);
  apps.push(app);
  return app;
}

describe('the limit of requests', () => {
  /** A clock that stands still until it is moved on. */
  function clockFrom(start: string) {
    let nowMs = Date.parse(start);
    return { clock: () => new Date(nowMs), moveOn: (seconds: number) => (nowMs += seconds * 1000) };
  }
  const keys = new Map([
    ['one', 'north'],
    ['other', 'north'],
  ]);
  const asked = (app: FastifyInstance, key: string, url = '/v1/crops/lettuce') =>
    app.inject({ url, headers: { authorization: `Bearer ${key}` } });

  test('lets a minute’s requests through at once, refuses the next, and lets one more through in time', async () => {
    const { clock, moveOn } = clockFrom(NOW);
    const app = await start({ clock, rateLimit: 6, findOwner: keyring(keys) });
    for (let left = 5; left >= 0; left--) {
      const { statusCode, headers } = await asked(app, 'one');
      expect([statusCode, headers['ratelimit-limit'], headers['ratelimit-remaining']]).toEqual([
        200,
        '6',
        String(left),
      ]);
    }
    const refusal = await asked(app, 'one');
    expect([refusal.statusCode, refusal.json().code]).toEqual([429, 'too-many-requests']);
    expect(refusal.headers).toMatchObject({ 'retry-after': '10', 'ratelimit-remaining': '0', 'ratelimit-reset': '60' });
    moveOn(9);
    expect((await asked(app, 'one')).statusCode).toBe(429);
    moveOn(1);
    expect((await asked(app, 'one')).statusCode).toBe(200);
    expect((await asked(app, 'one')).statusCode).toBe(429);
    moveOn(3600);
    expect((await asked(app, 'one')).headers['ratelimit-remaining']).toBe('5');
  });

  test('is told in words', async () => {
    const { clock } = clockFrom(NOW);
    const app = await start({ clock, rateLimit: 1 });
    await app.inject('/v1/crops');
    const tooMany = refused(429, 'too-many-requests', 'the second', { url: '/v1/crops' }, 'Go on in 60 seconds');
    await expectProblem(app, tooMany);
  });

  test('is each key’s own, and strangers’ wrong keys use up neither', async () => {
    const { clock } = clockFrom(NOW);
    const app = await start({ clock, rateLimit: 2, findOwner: keyring(keys) });
    const statuses = async (...used: string[]) => {
      const answers = [];
      for (const key of used) answers.push((await asked(app, key)).statusCode);
      return answers;
    };
    expect(await statuses('guess-1', 'guess-2', 'guess-3', 'guess-4')).toEqual([401, 401, 429, 429]);
    expect(await statuses('one', 'one', 'one', 'other')).toEqual([200, 200, 429, 200]);
  });

  test('is no matter to who asks whether it lives', async () => {
    const app = await start({ rateLimit: 1 });
    for (let i = 0; i < 5; i++) {
      for (const url of ['/healthz', '/readyz', '/problems/not-found', '/openapi.json']) {
        expect((await app.inject(url)).statusCode).toBe(200);
      }
    }
  });

  test('of 0 is none', async () => {
    const app = await start({ rateLimit: 0 });
    for (let i = 0; i < 700; i++) expect((await app.inject('/v1/crops/lettuce')).statusCode).toBe(200);
    expect((await app.inject('/v1/crops')).headers['ratelimit-limit']).toBeUndefined();
  });

  test('remembers so many callers and no more, those who asked last', () => {
    const allow = rateLimit(2, 3);
    const remaining = (caller: string) => allow(caller, 0).remaining;
    expect(['a', 'b', 'c', 'a', 'd'].map(remaining)).toEqual([1, 1, 1, 0, 1]);
    // Of a, b, c the one silent longest was b.
    expect(['a', 'c', 'b'].map((caller) => allow(caller, 0).isAllowed)).toEqual([false, true, true]);
    expect(remaining('b')).toBe(0);
  });

  test('does not mind a clock that is set back', () => {
    const allow = rateLimit(1);
    expect([allow('a', 60_000).isAllowed, allow('a', 0).isAllowed, allow('a', 60_000).isAllowed]).toEqual([
      true,
      false,
      true,
    ]);
  });
});

describe('the metrics', () => {
  test('count requests by route, method and status, never by what a caller made up', async () => {
    const app = await start({});
    await keepQuillmere(app);
    for (const url of [
      '/v1/crops/lettuce',
      '/v1/crops/onion',
      '/v1/crops/none',
      '/made/up',
      '/other',
      '/v1/places/"}',
    ]) {
      await app.inject(url);
    }
    const { body, headers } = await app.inject('/metrics');
    expect(headers['content-type']).toBe('text/plain; version=0.0.4; charset=utf-8');
    const lines = body.split('\n');
    expect(lines).toContain('http_requests_total{route="/v1/crops/{id}",method="GET",status="200"} 2');
    expect(lines).toContain('http_requests_total{route="/v1/crops/{id}",method="GET",status="404"} 1');
    expect(lines).toContain('http_requests_total{route="/v1/places/{id}",method="PUT",status="201"} 2');
    expect(lines).toContain('http_requests_total{route="none",method="GET",status="404"} 2');
    expect(lines).toContain('http_request_duration_seconds_count{route="/v1/crops/{id}",method="GET"} 3');
    expect(lines).toContain('http_request_duration_seconds_bucket{route="/v1/crops/{id}",method="GET",le="+Inf"} 3');
    expect(body).not.toContain('made');
    expect(body).toMatch(/^process_resident_memory_bytes [1-9]\d+$/m);
  });

  test('are in the text form: each line a comment, or a name, labels and a number; buckets rise', async () => {
    const app = await start({});
    await app.inject('/v1/crops');
    const { body } = await app.inject({ url: '/metrics', headers: { accept: 'text/plain;version=0.0.4' } });
    expect(body.endsWith('\n')).toBe(true);
    const lines = body.trimEnd().split('\n');
    for (const line of lines)
      expect(line).toMatch(/^(# (HELP|TYPE) \w+ .+|\w+(\{\w+="[^"\\]*"(,\w+="[^"\\]*")*\})? [\d.e+-]+)$/);
    const buckets = lines
      .filter((line) => line.includes('_bucket{route="/v1/crops"'))
      .map((line) => Number(line.split(' ').at(-1)));
    expect(buckets).toHaveLength(13);
    expect(buckets).toEqual(buckets.toSorted((a, b) => a - b));
  });

  test('need a key where keys are set', async () => {
    const app = await start({ findOwner: keyring(new Map([['s3cret', 'north']])) });
    expect((await app.inject('/metrics')).statusCode).toBe(401);
    expect((await app.inject({ url: '/metrics', headers: { authorization: 'Bearer s3cret' } })).statusCode).toBe(200);
  });
});

describe('while the database is away', () => {
  test('what is kept is refused with 503 and a time to try again, and all else is answered', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'away-'));
    const store = await openStore(`sqlite:${folder}/data.db`);
    await store.close();
    await rm(folder, { recursive: true });
    const app = await start({ store });
    const document: OpenApiDocument = (await app.inject('/openapi.json')).json();
    const operations = operationsOf(document).filter(({ path }) => /^\/v1\/(places|beds|lots)/.test(path));
    expect(operations.length).toBeGreaterThanOrEqual(20);
    for (const { method, path, operationId, requestBody } of operations) {
      const payload = requestBody?.content['application/json']?.example as object | undefined;
      const url = path.replace('{id}', 'quillmere') + (linkQueries[operationId] ?? '');
      const { statusCode, headers } = await app.inject({ method, url, ...(payload ? { payload } : {}) });
      expect([operationId, statusCode, headers['retry-after']]).toEqual([operationId, 503, '5']);
    }
    await expectProblem(app, refused(503, 'storage-unavailable', 'ready', { url: '/readyz' }, 'Try again'));
    expect((await app.inject('/healthz')).statusCode).toBe(200);
    expect((await app.inject('/metrics')).statusCode).toBe(200);
    expect((await post(app, '/v1/forecasts', lettuceQuestion())).statusCode).toBe(200);
  });
});
