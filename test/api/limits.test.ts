import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { afterEach, describe, expect, test } from 'vitest';
import { keyring } from '../../src/http/auth/keys.js';
import { openStore } from '../../src/storage/open-store.js';
import { expectProblem, refused } from './bad-request.js';
import { dateAfter, keepQuillmere, lettuceQuestion, linkQueries, NOW, post, quillmere, startApp } from './helper.js';
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
    expect(refusal.headers).toMatchObject({
      'retry-after': '10',
      'ratelimit-remaining': '0',
      'ratelimit-reset': '10',
      'ratelimit-policy': '"requests";q=6;w=60, "at-once";q=8;qu="concurrent-requests"',
      ratelimit: '"requests";r=0;t=10',
    });
    expect(refusal.json()).toMatchObject({ 'violated-policies': ['requests'], retryAfterS: 10 });
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
    const app = await start({ clock, rateLimit: 1, findOwner: keyring(keys) });
    await asked(app, 'one');
    const second = { url: '/v1/crops', headers: { authorization: 'Bearer one' } };
    const tooMany = refused(429, 'too-many-requests', 'the second', second, 'Go on in 60 seconds');
    await expectProblem(app, tooMany);
  });

  test('is each owner’s own, whichever key is used, and strangers’ wrong keys use up neither', async () => {
    const { clock } = clockFrom(NOW);
    const owners = new Map([...keys, ['third', 'south']]);
    const app = await start({ clock, rateLimit: 3, findOwner: keyring(owners) });
    const statuses = async (...used: string[]) => {
      const answers = [];
      for (const key of used) answers.push((await asked(app, key)).statusCode);
      return answers;
    };
    expect(await statuses('guess-1', 'guess-2', 'guess-3', 'guess-4')).toEqual([401, 401, 401, 429]);
    expect(await statuses('one', 'other', 'one', 'other', 'one', 'third')).toEqual([200, 200, 200, 429, 429, 200]);
  });

  test('counts what needs no key against the address that asks, whatever key it shows, but not whether the service lives', async () => {
    const open = [
      '/openapi.json',
      '/docs/json',
      '/problems/not-found',
      '/',
      '/page.css',
      '/made/up',
      '/v1/beds/north/calendar.ics',
    ];
    const { clock } = clockFrom(NOW);
    const app = await start({ clock, rateLimit: open.length, findOwner: keyring(keys) });
    for (const url of open) expect((await asked(app, 'one', url)).headers['ratelimit-limit']).toBe(String(open.length));
    for (const url of open) expect([url, (await asked(app, 'one', url)).statusCode]).toEqual([url, 429]);
    for (const url of ['/healthz', '/readyz']) expect((await app.inject(url)).statusCode).toBe(200);
    expect((await asked(app, 'one')).statusCode).toBe(200);
    expect((await app.inject({ url: '/openapi.json', remoteAddress: '10.0.0.7' })).statusCode).toBe(200);
  });

  test('takes an address of IPv6 for all that begin like it', async () => {
    const { clock } = clockFrom(NOW);
    const app = await start({ clock, rateLimit: 1 });
    const statusOf = async (remoteAddress: string) =>
      (await app.inject({ url: '/v1/crops/lettuce', remoteAddress })).statusCode;
    expect(await statusOf('2001:db8:0:7::1')).toBe(200);
    expect(await statusOf('2001:db8::7:9:8:7:6')).toBe(429);
    expect(await statusOf('2001:db8:0:8::1')).toBe(200);
    expect(await statusOf('10.0.0.7')).toBe(200);
    expect(await statusOf('::ffff:10.0.0.7')).toBe(429);
  });

  test('of 0 is none', async () => {
    const app = await start({ rateLimit: 0 });
    for (let i = 0; i < 700; i++) expect((await app.inject('/v1/crops/lettuce')).statusCode).toBe(200);
    expect((await app.inject('/v1/crops')).headers['ratelimit-limit']).toBeUndefined();
  });
});

describe('the limits of long work', () => {
  const keys = new Map([
    ['one', 'north'],
    ['other', 'south'],
  ]);
  const from = '2027-08-03';
  const years = Array.from({ length: 4 * 365 }, (_, day) => {
    const mean = 11 - 8 * Math.cos((2 * Math.PI * (day - 25)) / 365) + 4 * Math.sin(day / 4.3);
    return { date: dateAfter('2023-08-01', day), min: mean - 5, max: mean + 5 };
  });
  const windows = (app: FastifyInstance, key: string, to: string) =>
    app.inject({
      method: 'POST',
      url: '/v1/sowing-windows',
      headers: { authorization: `Bearer ${key}` },
      payload: {
        crop: 'lettuce',
        where: { place: quillmere },
        from,
        to,
        temperatures: [{ medium: 'air', daily: years }],
      },
    });
  const to = (n: number): string => dateAfter(from, 10 + n);

  test('refuse the ninth answer of an owner at one time, and nobody else', async () => {
    const app = await start({ findOwner: keyring(keys), rateLimit: 600 });
    const many = await Promise.all(Array.from({ length: 12 }, (_, i) => windows(app, 'one', to(i))));
    const refused = many.filter(({ statusCode }) => statusCode !== 200);
    expect(refused).toHaveLength(4);
    for (const one of refused) {
      expect(one.statusCode).toBe(429);
      const retryAfterS = Number(one.headers['retry-after']);
      expect(retryAfterS).toBeGreaterThanOrEqual(1);
      expect(one.json()).toMatchObject({ code: 'too-much-at-once', 'violated-policies': ['at-once'], retryAfterS });
      expect(one.headers.ratelimit).toBe(`"at-once";r=0;t=${retryAfterS}`);
    }
    expect((await windows(app, 'other', to(0))).statusCode).toBe(200);
    // Their places are free again.
    expect((await windows(app, 'one', to(20))).statusCode).toBe(200);
  });

  test('refuse the ninth before any series is read for it; what is remembered is answered beside eight, and costs none of the allowance', async () => {
    const store = await openStore('sqlite::memory:');
    const read: string[] = [];
    const counting = {
      ...store,
      air: (...asked: Parameters<typeof store.air>) => {
        read.push(asked[1]);
        return store.air(...asked);
      },
    };
    const app = await start({ store: counting, findOwner: keyring(keys), rateLimit: 600, workLimit: 9 });
    const send = (method: 'GET' | 'PUT' | 'POST', url: string, payload?: object) =>
      app.inject({ method, url, headers: { authorization: 'Bearer one' }, ...(payload ? { payload } : {}) });
    const places = Array.from({ length: 13 }, (_, i) => `place-${i}`);
    for (const id of places) {
      expect((await send('PUT', `/v1/places/${id}`, { name: id, ...quillmere })).statusCode).toBe(201);
      expect((await send('POST', `/v1/places/${id}/air`, { medium: 'air', daily: years })).statusCode).toBe(200);
    }
    const [known, ...others] = places.map((id) => `/v1/places/${id}/sowing-windows?crop=lettuce`);
    const first = await send('GET', known!);
    expect([first.statusCode, first.headers.ratelimit]).toEqual([200, '"work";r=8;t=7']);
    read.length = 0;
    const many = Promise.all(others.map((url) => send('GET', url)));
    const remembered = await send('GET', known!);
    expect([remembered.statusCode, remembered.body]).toEqual([200, first.body]);
    expect(remembered.headers.ratelimit).toMatch(/^"requests"/);
    const answers = await many;
    const statuses = answers.map(({ statusCode }) => statusCode);
    expect(statuses.toSorted()).toEqual([...Array(8).fill(200), ...Array(4).fill(429)]);
    for (const { statusCode, headers, json } of answers) {
      if (statusCode === 200) continue;
      const retryAfterS = Number(headers['retry-after']);
      expect(retryAfterS).toBeGreaterThanOrEqual(1);
      expect(json()).toMatchObject({ code: 'too-much-at-once', 'violated-policies': ['at-once'], retryAfterS });
    }
    expect(read.toSorted()).toEqual(others.flatMap((_, i) => (statuses[i] === 200 ? places[i + 1]! : [])).toSorted());
    await store.close();
  });

  test('refuse a sowing before it is kept', async () => {
    const app = await start({ findOwner: keyring(keys), rateLimit: 600, workLimit: 1 });
    const send = (method: 'GET' | 'PUT' | 'POST', url: string, payload?: object) =>
      app.inject({ method, url, headers: { authorization: 'Bearer one' }, ...(payload ? { payload } : {}) });
    await send('PUT', '/v1/places/quillmere', { name: 'Quillmere', ...quillmere });
    await send('POST', '/v1/places/quillmere/air', { medium: 'air', daily: years });
    await send('PUT', '/v1/beds/north', { place: 'quillmere', name: 'North bed' });
    const sown = { bed: 'north', crop: 'lettuce', date: '2027-07-20' };
    expect((await send('PUT', '/v1/sowings/first', sown)).statusCode).toBe(201);
    expect((await send('PUT', '/v1/sowings/second', sown)).statusCode).toBe(429);
    const kept = (await send('GET', '/v1/sowings')).json() as { sowings: { id: string }[] };
    expect(kept.sowings.map(({ id }) => id)).toEqual(['first']);
  });

  test('count answers that are worked out a minute, and nothing else', async () => {
    let nowMs = Date.parse(NOW);
    const app = await start({
      findOwner: keyring(keys),
      rateLimit: 600,
      workLimit: 2,
      clock: () => new Date(nowMs),
    });
    const first = await windows(app, 'one', to(0));
    expect(first.statusCode).toBe(200);
    expect(first.headers).toMatchObject({
      'ratelimit-policy': '"requests";q=600;w=60, "work";q=2;w=60, "at-once";q=8;qu="concurrent-requests"',
      ratelimit: '"work";r=1;t=30',
    });
    expect((await windows(app, 'one', to(1))).statusCode).toBe(200);
    const refusal = await windows(app, 'one', to(2));
    expect(refusal.statusCode).toBe(429);
    expect(refusal.json()).toMatchObject({
      code: 'too-many-requests',
      'violated-policies': ['work'],
      retryAfterS: 30,
    });
    expect(refusal.headers).toMatchObject({
      'retry-after': '30',
      'ratelimit-reset': '30',
      ratelimit: '"work";r=0;t=30',
    });
    const short = await app.inject({
      method: 'POST',
      url: '/v1/forecasts',
      headers: { authorization: 'Bearer one' },
      payload: lettuceQuestion(),
    });
    expect(short.statusCode).toBe(200);
    expect(short.headers.ratelimit).toBe('"requests";r=596;t=1');
    expect((await windows(app, 'other', to(0))).statusCode).toBe(200);
    nowMs += 30_000;
    expect((await windows(app, 'one', to(3))).statusCode).toBe(200);
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
    const app = await start({ store });
    const document: OpenApiDocument = (await app.inject('/openapi.json')).json();
    const operations = operationsOf(document).filter(({ path }) => /^\/v1\/(places|beds|lots)/.test(path));
    expect(operations.length).toBeGreaterThanOrEqual(20);
    for (const { method, path, operationId, requestBody } of operations) {
      const payload = requestBody?.content['application/json']?.example as object | undefined;
      const url = path.replace('{id}', 'quillmere') + (linkQueries[operationId] ?? '');
      const { statusCode, headers, ...answer } = await app.inject({ method, url, ...(payload ? { payload } : {}) });
      expect([operationId, statusCode, headers['retry-after']]).toEqual([operationId, 503, '5']);
      expect(answer.json()).toMatchObject({ code: 'storage-unavailable', retryAfterS: 5 });
    }
    await expectProblem(app, refused(503, 'storage-unavailable', 'ready', { url: '/readyz' }, 'Try again'));
    expect((await app.inject('/healthz')).statusCode).toBe(200);
    expect((await app.inject('/metrics')).statusCode).toBe(200);
    expect((await post(app, '/v1/forecasts', lettuceQuestion())).statusCode).toBe(200);
    await rm(folder, { recursive: true });
  });

  test('a file that is gone is named as such, without a time to try again, as waiting mends nothing', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'gone-'));
    const store = await openStore(`sqlite:${folder}/data.db`);
    const app = await start({ store });
    await rm(join(folder, 'data.db'));
    for (const url of ['/readyz', '/v1/places']) {
      await expectProblem(app, refused(503, 'storage-damaged', url, { url }, 'gone'));
      const { headers, ...answer } = await app.inject(url);
      expect([headers['retry-after'], answer.json().retryAfterS]).toEqual([undefined, undefined]);
    }
    await store.close();
    await rm(folder, { recursive: true });
  });
});
