import { createHash } from 'node:crypto';
import { Writable } from 'node:stream';
import type { FastifyInstance, LightMyRequestResponse } from 'fastify';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Store } from '../../src/garden/store/store.js';
import { keyring } from '../../src/http/auth/keys.js';
import { serviceLog } from '../../src/http/server/service-log.js';
import { openStore } from '../../src/storage/open-store.js';
import { expectProblem, refused } from './bad-request.js';
import { lettuceQuestion, NOW, quillmere, startApp } from './helper.js';
import { type OpenApiDocument, operationsOf } from './openapi-arbitraries.js';

const FORM = { 'content-type': 'application/x-www-form-urlencoded' };
const HALF_A_YEAR_S = 180 * 24 * 3600;
const keys = new Map([
  ['s3cret-of-the-north', 'north'],
  ['0ther-of-the-north', 'north'],
  ['s3cret-of-the-south', 'south'],
]);

const apps: FastifyInstance[] = [];
afterEach(async () => {
  for (const app of apps.splice(0)) await app.close();
});

async function start(options: Parameters<typeof startApp>[0] = {}): Promise<FastifyInstance> {
  const app = await startApp({ findOwner: keyring(keys), ...options });
  apps.push(app);
  return app;
}

/** A store that several instances have. */
async function sharedStore(): Promise<Store> {
  const store = await openStore('sqlite::memory:');
  stores.push(store);
  return store;
}
const stores: Store[] = [];
afterEach(async () => {
  for (const store of stores.splice(0)) await store.close();
});

const begin = (app: FastifyInstance, key: string, headers: Record<string, string> = {}) =>
  app.inject({ method: 'POST', url: '/session', payload: { key }, headers });
const sendForm = (app: FastifyInstance, payload: string, headers: Record<string, string> = {}) =>
  app.inject({ method: 'POST', url: '/session', payload, headers: { ...FORM, ...headers } });

/** The cookie as a browser sends it back. */
const cookieOf = ({ headers }: LightMyRequestResponse): string => String(headers['set-cookie']).split(';', 1)[0]!;
const attributesOf = ({ headers }: LightMyRequestResponse): string[] =>
  String(headers['set-cookie']).split('; ').slice(1).sort();

describe('a key that is given once', () => {
  it('is answered with a cookie that no script can read and no other site send', async () => {
    const answer = await begin(await start(), 's3cret-of-the-north');
    expect([answer.statusCode, answer.body]).toEqual([204, '']);
    expect(cookieOf(answer)).toMatch(/^session=[\w-]{43}$/);
    expect(attributesOf(answer)).toEqual(['HttpOnly', `Max-Age=${HALF_A_YEAR_S}`, 'Path=/', 'SameSite=Strict']);
  });

  it('keeps its cookie to https where it came so', async () => {
    const app = await startApp({ findOwner: keyring(keys) });
    apps.push(app);
    const overTls = { encrypted: true };
    app.addHook('onRequest', async ({ raw }) => {
      Object.assign(raw.socket, overTls);
    });
    expect(attributesOf(await begin(app, 's3cret-of-the-north'))).toContain('Secure');
  });

  it('keeps its cookie to https where the browser came so, and what stands before the service took it off', async () => {
    const app = await start();
    const through = (origin: string) => begin(app, 's3cret-of-the-north', { host: 'quillmere.example', origin });
    expect(attributesOf(await through('https://quillmere.example'))).toContain('Secure');
    expect(attributesOf(await through('http://quillmere.example'))).not.toContain('Secure');
  });

  it('is not in the cookie, and each key has another', async () => {
    const app = await start();
    const cookies = [];
    for (const key of keys.keys()) cookies.push(cookieOf(await begin(app, key)));
    expect(new Set(cookies).size).toBe(keys.size);
    const forms = (key: string) => [
      key,
      Buffer.from(key).toString('base64url'),
      Buffer.from(key).toString('hex'),
      createHash('sha256').update(key).digest('base64url'),
    ];
    for (const key of keys.keys()) {
      for (const form of forms(key)) expect(cookies.join()).not.toContain(form);
    }
  });

  it('opens what its owner has, and nothing of another, by any instance', async () => {
    const store = await sharedStore();
    const [app, instance] = [await start({ store }), await start({ store })];
    const north = cookieOf(await begin(app, 's3cret-of-the-north'));
    const south = cookieOf(await begin(instance, 's3cret-of-the-south'));
    const place = { name: 'Quillmere', ...quillmere };
    const put = (cookie: string) =>
      app.inject({ method: 'PUT', url: '/v1/places/quillmere', payload: place, headers: { cookie } });
    expect((await put(north)).statusCode).toBe(201);
    const seenBy = async (headers: Record<string, string>) =>
      (await app.inject({ url: '/v1/places/quillmere', headers })).statusCode;
    expect(await seenBy({ cookie: north })).toBe(200);
    expect(await seenBy({ cookie: `theme=dark; ${north}; other` })).toBe(200);
    expect(await seenBy({ cookie: south })).toBe(404);
    expect(await seenBy({ authorization: 'Bearer 0ther-of-the-north' })).toBe(200);
    expect(await seenBy({ cookie: cookieOf(await begin(instance, 's3cret-of-the-north')) })).toBe(200);
    const remove = (cookie: string) =>
      app.inject({ method: 'DELETE', url: '/v1/places/quillmere', headers: { cookie } });
    expect([(await remove(south)).statusCode, (await remove(north)).statusCode]).toEqual([404, 204]);
  });

  it('is outdone by a key in the header, be that right or wrong, but not by a password for something else', async () => {
    const app = await start();
    const cookie = cookieOf(await begin(app, 's3cret-of-the-north'));
    const place = { name: 'Quillmere', ...quillmere };
    await app.inject({ method: 'PUT', url: '/v1/places/quillmere', payload: place, headers: { cookie } });
    const status = async (authorization: string) =>
      (await app.inject({ url: '/v1/places/quillmere', headers: { cookie, authorization } })).statusCode;
    expect(await status('Bearer s3cret-of-the-south')).toBe(404);
    expect(await status('Bearer guessed')).toBe(401);
    expect(await status('Basic cXVpbGxtZXJl')).toBe(200);
  });

  it('takes questions, files and all, and what is answered is kept by no cache but the browser’s own', async () => {
    const app = await start();
    const cookie = cookieOf(await begin(app, 's3cret-of-the-north'));
    const ask = (headers: Record<string, string>) =>
      app.inject({ method: 'POST', url: '/v1/forecasts', payload: lettuceQuestion(), headers });
    const answer = await ask({ cookie });
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['cache-control']).toBe('private, no-cache');
    const byKey = await ask({ authorization: 'Bearer s3cret-of-the-north' });
    expect(byKey.headers['cache-control']).toBe('private, no-cache');
    expect(byKey.json()).toEqual(answer.json());
  });
});

describe('a cookie that was never given', () => {
  const at = (value: string, i: number, by: string) => value.slice(0, i) + by + value.slice(i + 1);
  const forged: readonly (readonly [string, (real: string) => string])[] = [
    ['cut short', (real) => real.slice(0, -1)],
    ['with one more letter', (real) => `${real}A`],
    ['with one letter changed', (real) => at(real, 20, real[20] === 'A' ? 'B' : 'A')],
    ['empty', () => 'session='],
    ['without a value', () => 'session'],
    ['of the key itself', () => 'session=s3cret-of-the-north'],
    ['of the key’s digest', () => `session=${createHash('sha256').update('s3cret-of-the-north').digest('base64url')}`],
    ['under another name', (real) => real.replace('session', 'Session')],
    ['that is not decodable', () => 'session=%E0%A4%A'],
    ['called like what every object has', () => '__proto__=x; constructor=y'],
    ['of semicolons', () => ';;;=;=;;'],
    ['of eight thousand letters', () => `session=${'x'.repeat(8000)}`],
  ];

  it.each(forged)('opens nothing: %s', async (_, forge) => {
    const app = await start();
    const real = cookieOf(await begin(app, 's3cret-of-the-north'));
    const answer = await app.inject({ url: '/v1/crops', headers: { cookie: forge(real) } });
    expect([answer.statusCode, answer.json().code]).toEqual([401, 'unauthorized']);
  });

  it('opens nothing once its key is taken out', async () => {
    const store = await sharedStore();
    const cookie = cookieOf(await begin(await start({ store }), 's3cret-of-the-north'));
    const without = await start({ store, findOwner: keyring(new Map([...keys].slice(1))) });
    expect((await without.inject({ url: '/v1/crops', headers: { cookie } })).statusCode).toBe(401);
    expect((await (await start({ store })).inject({ url: '/v1/crops', headers: { cookie } })).statusCode).toBe(200);
  });

  it('does not open as a key in the header either', async () => {
    const app = await start();
    const session = cookieOf(await begin(app, 's3cret-of-the-north')).replace('session=', '');
    const answer = await app.inject({ url: '/v1/crops', headers: { authorization: `Bearer ${session}` } });
    expect(answer.statusCode).toBe(401);
  });
});

describe('a page of another site', () => {
  const foreign: readonly (readonly [string, Record<string, string>])[] = [
    ['by its origin', { origin: 'http://elsewhere.example' }],
    ['that hides its origin', { origin: 'null' }],
    ['by the browser’s word', { 'sec-fetch-site': 'cross-site' }],
    ['under the same name', { 'sec-fetch-site': 'same-site' }],
  ];
  const host = 'quillmere.example:8080';
  const ours = { host, origin: `http://${host}`, 'sec-fetch-site': 'same-origin' };
  const place = { name: 'Quillmere', ...quillmere };
  let app: FastifyInstance;
  let cookie: string;
  beforeEach(async () => {
    app = await start();
    cookie = cookieOf(await begin(app, 's3cret-of-the-north'));
  });
  const change = (method: 'PUT' | 'PATCH' | 'DELETE', headers: Record<string, string>) =>
    app.inject({
      method,
      url: '/v1/places/quillmere',
      headers: { host, ...headers },
      ...(method === 'DELETE' ? {} : { payload: method === 'PUT' ? place : { name: 'Another' } }),
    });

  it.each(foreign)('changes nothing with the cookie: %s', async (_, headers) => {
    expect((await change('PUT', { cookie, ...ours })).statusCode).toBe(201);
    for (const method of ['PUT', 'PATCH', 'DELETE'] as const) {
      const answer = await change(method, { cookie, ...headers });
      expect([answer.statusCode, answer.json().code]).toEqual([403, 'foreign-origin']);
    }
    const kept = await app.inject({ url: '/v1/places/quillmere', headers: { cookie } });
    expect(kept.json()).toMatchObject({ name: 'Quillmere' });
    expect((await change('PATCH', { cookie, ...ours })).statusCode).toBe(200);
    expect((await change('DELETE', { cookie, host })).statusCode).toBe(204);
  });

  it.each(foreign)(
    'may ask with a key of its own, and the cookie beside it does not matter: %s',
    async (_, headers) => {
      const key = { authorization: 'Bearer s3cret-of-the-south' };
      expect((await change('PUT', { cookie, ...key, ...headers })).statusCode).toBe(201);
    },
  );

  it('can lead here, where nothing is changed by it', async () => {
    for (const method of ['GET', 'HEAD'] as const) {
      const headers = { cookie, 'sec-fetch-site': 'cross-site' };
      expect((await app.inject({ method, url: '/v1/crops', headers })).statusCode).toBe(200);
    }
  });

  it.each(foreign)('neither begins a session nor ends one: %s', async (_, headers) => {
    const answers = [
      await begin(app, 's3cret-of-the-north', headers),
      await sendForm(app, 'key=s3cret-of-the-north', headers),
      await sendForm(app, 'key=', headers),
      await app.inject({ method: 'DELETE', url: '/session', headers: { cookie, ...headers } }),
    ];
    for (const { statusCode, headers } of answers) {
      expect([statusCode, headers['set-cookie']]).toEqual([403, undefined]);
    }
  });

  it('is told so in words', async () => {
    const ask = { method: 'POST', url: '/session', payload: { key: 'x' }, headers: { origin: 'null' } } as const;
    await expectProblem(app, refused(403, 'foreign-origin', 'another site', ask, 'A page of another site sent this'));
  });
});

describe('a form without scripts', () => {
  it('may say where it comes from: with no-referrer browsers write "Origin: null", and over http nothing else tells', async () => {
    expect((await (await start()).inject('/docs')).headers['referrer-policy']).toBe('same-origin');
  });

  it('leads to the page with a cookie, or back with a wrong key', async () => {
    const app = await start();
    const good = await sendForm(app, 'key=s3cret-of-the-north');
    expect([good.statusCode, good.headers.location]).toEqual([303, '/']);
    const opened = await app.inject({ url: '/v1/crops', headers: { cookie: cookieOf(good) } });
    expect(opened.statusCode).toBe(200);
    const wrong = await sendForm(app, 'key=guessed');
    expect([wrong.statusCode, wrong.headers.location, wrong.headers['set-cookie']]).toEqual([
      303,
      '/?key=refused',
      undefined,
    ]);
  });

  it('goes on with what the page was asked, and nowhere else', async () => {
    const app = await start();
    const leads = async (key: string, asked: string) =>
      (await sendForm(app, new URLSearchParams({ key, asked }).toString())).headers.location;
    expect(await leads('s3cret-of-the-north', '/?bed=north&crop=carrot')).toBe('/?bed=north&crop=carrot');
    expect(await leads('guessed', '/?bed=north&key=refused')).toBe('/?bed=north&key=refused');
    for (const elsewhere of ['//other.example', 'https://other.example/?a=b', '/docs', '/\\other.example', '?a=b']) {
      expect(await leads('s3cret-of-the-north', elsewhere), elsewhere).toBe('/');
    }
    expect(await leads('s3cret-of-the-north', '/?a=b\r\nSet-Cookie: c=d')).toMatch(/^\/\?a=b%0D%0ASet-Cookie/);
  });

  it('is decoded as browsers encode it, and blanks around a pasted key are no part of it', async () => {
    const app = await start({ findOwner: keyring(new Map([['a+b=c&d%é', 'north']])) });
    const sent = new URLSearchParams({ key: ' a+b=c&d%é\n' }).toString();
    const answer = await sendForm(app, sent, { 'content-type': 'application/x-www-form-urlencoded; charset=UTF-8' });
    expect(cookieOf(answer)).toMatch(/^session=[\w-]{43}$/);
  });

  it('ends the session with an empty key', async () => {
    const answer = await sendForm(await start(), 'key=');
    expect([answer.statusCode, answer.headers.location]).toEqual([303, '/']);
    expect([cookieOf(answer), ...attributesOf(answer)]).toEqual([
      'session=',
      'HttpOnly',
      'Max-Age=0',
      'Path=/',
      'SameSite=Strict',
    ]);
  });

  it('is refused in words where it is not that form, or too large', async () => {
    const app = await start();
    const form = (payload: string) => ({ method: 'POST', url: '/session', payload, headers: FORM }) as const;
    for (const one of [
      refused(422, 'not-understood', 'no key', form('name=x'), 'key is missing', '#/key'),
      refused(422, 'not-understood', 'more than a key', form('key=x&__proto__=y'), '__proto__ is not a field'),
      refused(422, 'not-understood', 'nothing', form(''), 'key is missing', '#/key'),
      refused(413, 'too-large', 'twenty kilobytes', form(`key=${'x'.repeat(20_000)}`), '16 kB of a form'),
    ]) {
      await expectProblem(app, one);
    }
  });

  it('goes nowhere else', async () => {
    const app = await start({ findOwner: undefined });
    const document: OpenApiDocument = (await app.inject('/openapi.json')).json();
    const others = operationsOf(document).filter(({ method, path }) => method !== 'GET' && path !== '/session');
    expect(others.length).toBeGreaterThan(20);
    for (const { method, path } of others) {
      const url = path.replaceAll(/\{\w+\}/g, 'quillmere');
      const answer = await app.inject({ method, url, payload: 'key=x', headers: FORM });
      expect([url, answer.statusCode]).toEqual([url, 415]);
    }
  });

  it('is in the OpenAPI document, and its example is a form that is taken', async () => {
    const app = await start({ findOwner: keyring(new Map([['a-long-secret', 'north']])) });
    const document: OpenApiDocument = (await app.inject('/openapi.json')).json();
    const { requestBody, responses } = operationsOf(document).find(
      ({ operationId }) => operationId === 'beginSession',
    )!;
    expect(Object.keys(requestBody!.content)).toEqual(['application/json', FORM['content-type']]);
    const example = requestBody!.content[FORM['content-type']]!.example as Record<string, string>;
    const answer = await sendForm(app, new URLSearchParams(example).toString());
    expect(Object.keys(responses)).toContain(String(answer.statusCode));
    expect(answer.headers.location).toBe('/');
  });
});

describe('a session', () => {
  it('is taken back by DELETE, from whoever has one or not', async () => {
    const app = await start();
    for (const cookie of [cookieOf(await begin(app, 's3cret-of-the-north')), 'session=forged', '']) {
      const answer = await app.inject({ method: 'DELETE', url: '/session', headers: cookie ? { cookie } : {} });
      expect([answer.statusCode, answer.body, cookieOf(answer)]).toEqual([204, '', 'session=']);
      expect(attributesOf(answer)).toContain('Max-Age=0');
    }
  });

  it('is not begun with a wrong key, and that is said', async () => {
    const app = await start();
    for (const key of ['guessed', '', 's3cret-of-the-nort', 's3cret-of-the-north\0']) {
      const ask = { method: 'POST', url: '/session', payload: { key } } as const;
      await expectProblem(app, refused(401, 'unauthorized', key, ask, 'This is not one of the keys'));
      expect((await app.inject(ask)).headers['set-cookie']).toBeUndefined();
    }
  });

  it.each([{}, { key: 7 }, { key: null }, { key: 'x', owner: 'north' }, [], 'key'])(
    'is begun with a key and nothing else: %j',
    async (payload) => {
      const answer = await (await start()).inject({
        method: 'POST',
        url: '/session',
        payload: JSON.stringify(payload),
        headers: { 'content-type': 'application/json' },
      });
      expect([answer.statusCode, answer.json().code]).toEqual([422, 'not-understood']);
    },
  );

  it('is not begun by a key in the address, which others may read', async () => {
    const app = await start();
    const url = '/session?key=s3cret-of-the-north';
    for (const method of ['GET', 'POST'] as const) {
      const answer = await app.inject({
        method,
        url,
        ...(method === 'POST' ? { payload: { key: 's3cret-of-the-north' } } : {}),
      });
      expect([answer.statusCode, answer.json().code]).toEqual([400, 'key-in-address']);
    }
    const guess = await app.inject({
      method: 'POST',
      url: '/session?key=guess',
      payload: { key: 's3cret-of-the-north' },
    });
    expect(guess.statusCode).toBe(422);
  });

  it('is no matter where nobody needs a key', async () => {
    const app = await start({ findOwner: undefined });
    const [json, form] = [await begin(app, 'anything'), await sendForm(app, 'key=anything')];
    expect([json.statusCode, json.headers['set-cookie']]).toEqual([204, undefined]);
    expect([form.statusCode, form.headers.location, form.headers['set-cookie']]).toEqual([303, '/', undefined]);
    expect((await app.inject({ url: '/v1/crops', headers: { cookie: 'session=old' } })).statusCode).toBe(200);
  });

  it('counts with all keys of its owner against the limit, and guesses count with the guesser’s others', async () => {
    const app = await start({ rateLimit: 3, clock: () => new Date(NOW) });
    const guesses = [];
    const cookie = cookieOf(await begin(app, 's3cret-of-the-north'));
    for (const key of ['guess-1', 'guess-2', 's3cret-of-the-north']) guesses.push((await begin(app, key)).statusCode);
    expect(guesses).toEqual([401, 401, 429]);
    expect((await sendForm(app, 'key=guess-3')).statusCode).toBe(429);
    const left = async (headers: Record<string, string>) =>
      (await app.inject({ url: '/v1/crops', headers })).headers['ratelimit-remaining'];
    expect(await left({ cookie })).toBe('2');
    expect(await left({ authorization: 'Bearer s3cret-of-the-north' })).toBe('1');
    expect(await left({ authorization: 'Bearer 0ther-of-the-north' })).toBe('0');
  });

  it('is not in the log, nor is its key', async () => {
    const lines: string[] = [];
    const stream = new Writable({
      write(line, _, done) {
        lines.push(String(line));
        done();
      },
    });
    const app = await start({ log: serviceLog('trace', stream) });
    const cookie = cookieOf(await begin(app, 's3cret-of-the-north'));
    await sendForm(app, 'key=s3cret-of-the-north');
    await app.inject('/session?key=s3cret-of-the-north');
    await app.inject({ url: '/v1/crops', headers: { cookie } });
    expect(lines.length).toBeGreaterThanOrEqual(4);
    expect(lines.join()).toContain('/session?key=[Redacted]');
    expect(lines.join()).not.toContain('s3cret');
    expect(lines.join()).not.toContain(cookie.replace('session=', ''));
  });
});
