import { request } from 'undici';
import { afterEach, describe, expect, it } from 'vitest';
import { answerTo, bodyOf, headerOf, statusOf } from './raw-http.js';
import { addressOf, killAll, run, written } from './run-service.js';

afterEach(killAll);

const KEY = 'plain-key-of-the-society';
const withKeys = { API_KEYS: `society:${KEY}` };
const lines = (...all: string[]): string => `${all.join('\r\n')}\r\nConnection: close\r\n\r\n`;

describe('the host that is asked for', () => {
  it('stands in one Host header, and in HTTP/1.1 always', async () => {
    const address = await addressOf(run([], {}));
    const two = await answerTo(address, lines('GET /v1/crops HTTP/1.1', 'Host: localhost', 'Host: garden.example'));
    expect([statusOf(two), bodyOf(two).code]).toEqual([400, 'bad-request']);
    const same = await answerTo(address, lines('GET /v1/crops HTTP/1.1', 'Host: localhost', 'host: localhost'));
    expect(statusOf(same)).toBe(400);
    const none = await answerTo(address, lines('GET /v1/crops HTTP/1.1', 'Accept: */*'));
    expect([statusOf(none), headerOf(none, 'Content-Type')]).toEqual([400, 'application/problem+json; charset=utf-8']);
    expect(bodyOf(none)).toMatchObject({ code: 'bad-request', detail: expect.stringContaining('no Host header') });
    expect(statusOf(await answerTo(address, lines('GET /v1/crops HTTP/1.0', 'Accept: */*')))).toBe(200);
  });

  it('is this machine by its own names, where no key is needed: a page that rebinds its name reads nothing', async () => {
    const address = await addressOf(run([], { ALLOWED_HOSTS: 'garden.example, SHED.example' }));
    const { port } = new URL(address);
    const asked = async (host: string) =>
      statusOf(await answerTo(address, lines('GET /v1/beds HTTP/1.1', `Host: ${host}`)));
    for (const host of [
      'localhost',
      `localhost:${port}`,
      'LOCALHOST:1',
      '127.0.0.1',
      `[::1]:${port}`,
      'garden.example',
      'shed.example:81',
    ]) {
      expect([host, await asked(host)]).toEqual([host, 200]);
    }
    for (const host of [
      'evil.example',
      `evil.example:${port}`,
      'localhost.evil.example',
      '127.0.0.1.evil.example',
      '127.0.0.2',
      'a.garden.example',
      '0.0.0.0',
    ]) {
      expect([host, await asked(host)]).toEqual([host, 421]);
    }
    for (const path of ['/', '/page.js', '/openapi.json', '/docs', '/healthz', '/nothing']) {
      const answer = await answerTo(address, lines(`GET ${path} HTTP/1.1`, 'Host: evil.example'));
      expect([path, statusOf(answer), bodyOf(answer).code]).toEqual([path, 421, 'misdirected']);
    }
    const change = await answerTo(
      address,
      lines('DELETE /v1/beds/north HTTP/1.1', 'Host: evil.example', 'Origin: http://evil.example'),
    );
    expect(statusOf(change)).toBe(421);
  });

  it('is any, where keys are needed', async () => {
    const address = await addressOf(run([], withKeys));
    const answer = await answerTo(
      address,
      lines('GET /v1/crops HTTP/1.1', 'Host: garden.example', `Authorization: Bearer ${KEY}`),
    );
    expect(statusOf(answer)).toBe(200);
  });

  it('may stand in the request line as well', async () => {
    const address = await addressOf(run([], {}));
    expect(statusOf(await answerTo(address, lines('GET http://localhost/v1/crops HTTP/1.1', 'Host: localhost')))).toBe(
      200,
    );
  });
});

describe('what a proxy says of a request', () => {
  const limited = { RATE_LIMIT: '3', HOST: '127.0.0.1' };
  const statuses = async (address: string, headers: readonly string[]): Promise<number[]> => {
    const all = [];
    for (const header of headers)
      all.push(statusOf(await answerTo(address, lines('GET /v1/crops/lettuce HTTP/1.1', 'Host: localhost', header))));
    return all;
  };

  it('is not believed of anybody', async () => {
    const address = await addressOf(run([], limited));
    const claims = [
      'X-Forwarded-For: 192.0.2.1',
      'X-Forwarded-For: 192.0.2.2',
      'Forwarded: for=192.0.2.3',
      'Forwarded: for=192.0.2.4',
    ];
    expect(await statuses(address, claims)).toEqual([200, 200, 200, 429]);
  });

  it('is believed of a trusted one: each caller has an allowance of its own, and is in the log', async () => {
    const service = run([], { ...limited, TRUST_PROXY: '10.0.0.0/8, loopback' });
    const address = await addressOf(service);
    const one = 'X-Forwarded-For: 192.0.2.1';
    expect(await statuses(address, [one, one, one, one, 'X-Forwarded-For: 192.0.2.2'])).toEqual([
      200, 200, 200, 429, 200,
    ]);
    const other = 'Forwarded: for="[2001:db8::17]:4711";proto=https, for=10.1.2.3';
    expect(await statuses(address, [other, other, other, other, 'Forwarded: For=192.0.2.9:80'])).toEqual([
      200, 200, 200, 429, 200,
    ]);
    for (const ip of ['192.0.2.1', '2001:db8::17', '192.0.2.9'])
      await written(service, new RegExp(`"remoteAddress":"${ip}"`));
  });

  it('is not believed where a caller could have put it past the proxy', async () => {
    const address = await addressOf(run([], { ...limited, TRUST_PROXY: 'loopback' }));
    const claims = [1, 2, 3, 4].map((i) => `X-Forwarded-For: 192.0.2.7\r\nForwarded: for=192.0.2.${10 + i}`);
    expect(await statuses(address, claims)).toEqual([200, 200, 200, 429]);
  });

  it('goes into the cookie, and PUBLIC_URL before links that leave the service', async () => {
    const address = await addressOf(
      run([], { ...withKeys, TRUST_PROXY: 'loopback', PUBLIC_URL: 'https://garden.example' }),
    );
    const key = JSON.stringify({ key: KEY });
    const session = await answerTo(
      address,
      `${lines('POST /session HTTP/1.1', 'Host: inside', 'Forwarded: for=192.0.2.1;proto=https;host=garden.example', 'Origin: https://garden.example', 'Content-Type: application/json', `Content-Length: ${key.length}`)}${key}`,
    );
    expect(statusOf(session)).toBe(204);
    expect(headerOf(session, 'set-cookie')).toContain('Secure');
    const headers = { authorization: `Bearer ${KEY}`, 'content-type': 'application/json' };
    const place = { name: 'Quillmere', latitude: 44, longitude: -30, timeZone: 'Etc/GMT+2' };
    await request(`${address}/v1/places/quillmere`, { method: 'PUT', headers, body: JSON.stringify(place) });
    const bed = { place: 'quillmere', name: 'North', kind: 'open-ground' };
    const put = await request(`${address}/v1/beds/north`, { method: 'PUT', headers, body: JSON.stringify(bed) });
    const { calendarUrl } = (await put.body.json()) as { calendarUrl: string };
    expect(calendarUrl).toMatch(/^https:\/\/garden\.example\/v1\/beds\/north\/calendar\.ics\?token=/);
    const { pathname, search } = new URL(calendarUrl);
    expect((await request(`${address}${pathname}${search}`)).statusCode).toBe(200);
  });
});

describe('keys', () => {
  it('in an address are refused, and do not come into the log', async () => {
    const service = run([], withKeys);
    const address = await addressOf(service);
    for (const name of ['key', 'api_key', 'apikey', 'token', 'access_token', 'KEY']) {
      const answer = await request(`${address}/v1/crops?${name}=${KEY}`, {
        headers: { authorization: `Bearer ${KEY}` },
      });
      expect(answer.statusCode).toBe(400);
      const text = await answer.body.text();
      expect(JSON.parse(text).code).toBe('key-in-address');
      expect(text).not.toContain(KEY);
    }
    expect((await request(`${address}/?key=refused`)).statusCode).toBe(200);
    await written(service, /KEY=\[Redacted\]/);
    expect(service.output()).not.toContain(KEY);
  });

  it('that are wrong are told from none', async () => {
    const address = await addressOf(run([], withKeys));
    const refusal = async (headers: Record<string, string>) => {
      const { statusCode, headers: sent } = await request(`${address}/v1/crops`, { headers });
      return [statusCode, sent['www-authenticate']];
    };
    expect(await refusal({})).toEqual([401, 'Bearer']);
    expect(await refusal({ authorization: 'Bearer guess' })).toEqual([401, 'Bearer error="invalid_token"']);
    expect(await refusal({ cookie: 'session=guess' })).toEqual([401, 'Bearer error="invalid_token"']);
  });

  it('are guessed at no faster than the limit of requests, wherever', async () => {
    const address = await addressOf(run([], { ...withKeys, RATE_LIMIT: '10', TRUST_PROXY: 'loopback' }));
    const paths = [
      '/openapi.json',
      '/docs/static/index.html',
      '/page.js',
      '/',
      '/problems/not-found',
      '/nowhere',
      '/v1/crops',
      '/v1/beds/north/calendar.ics?token=guess',
    ];
    for (const [nth, path] of paths.entries()) {
      const statuses = [];
      for (let i = 0; i < 12; i++) {
        const headers = { authorization: `Bearer guess-${i}`, 'x-forwarded-for': `192.0.2.${nth}` };
        const { statusCode, body } = await request(`${address}${path}`, { headers });
        await body.dump();
        statuses.push(statusCode);
      }
      expect([path, statuses.at(-1)]).toEqual([path, 429]);
    }
  });
});

describe('every answer', () => {
  it('has an id, the one in its problem; the caller’s own comes back, and both are logged with the trace', async () => {
    const service = run([], {});
    const address = await addressOf(service);
    const ids = new Set<string>();
    for (const path of ['/v1/crops', '/', '/page.css', '/nowhere', '/v1/beds/none', '/openapi.json', '/healthz']) {
      const { headers, body, statusCode } = await request(`${address}${path}`, {
        headers: { 'x-request-id': 'Shed-7.a_b' },
      });
      const id = String(headers['request-id']);
      expect(id).toMatch(/^[\da-f]{8}-[\da-f]{4}-4[\da-f]{3}-[89ab][\da-f]{3}-[\da-f]{12}$/);
      expect(headers['x-request-id']).toBe('Shed-7.a_b');
      ids.add(id);
      if (statusCode === 404) expect(await body.json()).toMatchObject({ instance: `urn:uuid:${id}` });
      else await body.dump();
    }
    expect(ids.size).toBe(7);
    const traceparent = '00-0af7651916cd43dd8448eb211c80319c-b7ad6b7169203331-01';
    await request(`${address}/healthz`, { headers: { traceparent } });
    await written(service, new RegExp(`"traceparent":"${traceparent}"`));
    await written(service, /"callersId":"Shed-7.a_b"/);
    for (const id of ['x'.repeat(65), 'a b', '"', 'ä']) {
      const { headers } = await request(`${address}/healthz`, { headers: { 'x-request-id': id } });
      expect(headers['x-request-id']).toBeUndefined();
    }
  });

  it('to OPTIONS is 204 with the methods there are, without a key', async () => {
    const address = await addressOf(run([], withKeys));
    const allowed = async (path: string) => {
      const { statusCode, headers } = await request(`${address}${path}`, { method: 'OPTIONS' });
      return [statusCode, headers.allow];
    };
    expect(await allowed('/v1/beds/north')).toEqual([204, 'PUT, PATCH, GET, HEAD, DELETE, OPTIONS']);
    expect(await allowed('/v1/forecasts')).toEqual([204, 'POST, GET, HEAD, OPTIONS']);
    expect(await allowed('/v1/seeds-needed')).toEqual([204, 'POST, OPTIONS']);
    expect(await allowed('/')).toEqual([204, 'GET, HEAD, POST, OPTIONS']);
    expect(await allowed('/nowhere')).toEqual([404, undefined]);
    const all = await answerTo(address, lines('OPTIONS * HTTP/1.1', 'Host: localhost'));
    expect([statusOf(all), headerOf(all, 'allow')?.split(', ').sort()]).toEqual([
      204,
      ['DELETE', 'GET', 'HEAD', 'OPTIONS', 'PATCH', 'POST', 'PUT'],
    ]);
  });
});
