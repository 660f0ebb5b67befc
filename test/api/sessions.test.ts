import { createHash, createHmac } from 'node:crypto';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { afterEach, describe, expect, test } from 'vitest';
import type { Store } from '../../src/garden/store/store.js';
import { keyring } from '../../src/http/auth/keys.js';
import { openStore } from '../../src/storage/open-store.js';
import { NOW, startApp } from './helper.js';

const KEY = 's3cret-of-the-north';
const keys = new Map([
  [KEY, 'north'],
  ['s3cret-of-the-south', 'south'],
]);
const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
const FIREFOX = 'Mozilla/5.0 (X11; Linux x86_64; rv:140.0) Gecko/20100101 Firefox/140.0';

let nowMs = Date.parse(NOW);
const closing: (() => Promise<void>)[] = [];
afterEach(async () => {
  nowMs = Date.parse(NOW);
  for (const close of closing.splice(0)) await close();
});

/** Instances over one database. */
async function instances(n: number, url = 'sqlite::memory:'): Promise<{ store: Store; apps: FastifyInstance[] }> {
  const store = await openStore(url);
  const apps = await Promise.all(
    Array.from({ length: n }, () => startApp({ store, findOwner: keyring(keys), clock: () => new Date(nowMs) })),
  );
  closing.push(async () => {
    await Promise.all(apps.map((app) => app.close()));
    await store.close();
  });
  return { store, apps };
}

async function begin(app: FastifyInstance, key = KEY, headers: Record<string, string> = {}): Promise<string> {
  const answer = await app.inject({ method: 'POST', url: '/session', payload: { key }, headers });
  expect(answer.statusCode, answer.body).toBe(204);
  return String(answer.headers['set-cookie']).split(';', 1)[0]!;
}
const opens = async (app: FastifyInstance, cookie: string): Promise<number> =>
  (await app.inject({ url: '/v1/crops', headers: { cookie } })).statusCode;
interface Told {
  readonly id: string;
  readonly created: string;
  readonly lastUsed: string;
  readonly label: string;
  readonly isCurrent: boolean;
}
const listed = async (app: FastifyInstance, cookie: string): Promise<Told[]> =>
  (await app.inject({ url: '/v1/sessions', headers: { cookie } })).json().sessions;

describe('sessions', () => {
  test('are listed by their owner alone, and ended one by one, at once on all instances', async () => {
    const {
      apps: [one, two],
    } = await instances(2);
    const phone = await begin(one!, KEY, { 'user-agent': FIREFOX });
    nowMs += 60_000;
    const desk = await begin(two!);
    const south = await begin(two!, 's3cret-of-the-south');
    const told = await listed(one!, desk);
    expect(told.map(({ label, isCurrent }) => [label, isCurrent])).toEqual([
      [expect.stringContaining('lightMyRequest'), true],
      ['Firefox on Linux', false],
    ]);
    expect(told[1]!.created).toBe(NOW);
    const end = (cookie: string, id: string) =>
      two!.inject({ method: 'DELETE', url: `/v1/sessions/${id}`, headers: { cookie } });
    expect((await end(south, told[1]!.id)).statusCode).toBe(404);
    expect(await opens(one!, phone)).toBe(200);
    expect((await end(desk, told[1]!.id)).statusCode).toBe(204);
    for (const app of [one!, two!]) expect(await opens(app, phone)).toBe(401);
    for (const app of [one!, two!]) expect(await opens(app, desk)).toBe(200);
    expect((await end(desk, told[1]!.id)).statusCode).toBe(404);
  });

  test('a cookie that was copied opens nothing once its browser has left, by request or by form', async () => {
    const {
      apps: [app],
    } = await instances(1);
    const copied = await begin(app!);
    await app!.inject({ method: 'DELETE', url: '/session', headers: { cookie: copied } });
    expect(await opens(app!, copied)).toBe(401);
    const form = await begin(app!);
    const headers = { cookie: form, 'content-type': 'application/x-www-form-urlencoded' };
    await app!.inject({ method: 'POST', url: '/session', payload: 'key=', headers });
    expect(await opens(app!, form)).toBe(401);
    const first = await begin(app!);
    await begin(app!, KEY, { cookie: first });
    expect(await opens(app!, first)).toBe(401);
  });

  test('cookies of the form that was reckoned from the key open nothing', async () => {
    const {
      apps: [app],
    } = await instances(1);
    const reckoned = createHmac('sha256', createHash('sha256').update(KEY).digest()).update('session');
    expect(await opens(app!, `session=${reckoned.digest('base64url')}`)).toBe(401);
  });

  test('last for 180 days, and say to the hour when they were used', async () => {
    const {
      apps: [app],
    } = await instances(1);
    const cookie = await begin(app!);
    const lastUsed = async () => (await listed(app!, cookie))[0]!.lastUsed;
    nowMs += 59 * 60_000;
    expect(await lastUsed()).toBe(NOW);
    nowMs += 60_000;
    expect(await lastUsed()).toBe(new Date(nowMs).toISOString());
    nowMs = Date.parse(NOW) + 180 * DAY_MS - 1;
    expect(await opens(app!, cookie)).toBe(200);
    nowMs += 1;
    expect(await opens(app!, cookie)).toBe(401);
  });

  test('are fifty of an owner at most: the oldest ends', async () => {
    const { store, apps } = await instances(1);
    const [app] = apps;
    const first = await begin(app!);
    nowMs += 1000;
    const second = await begin(app!);
    const south = await begin(app!, 's3cret-of-the-south');
    for (let n = 0; n < 49; n++) {
      nowMs += 1000;
      await begin(app!);
    }
    expect(await store.sessions('north', nowMs)).toHaveLength(50);
    expect([await opens(app!, first), await opens(app!, second), await opens(app!, south)]).toEqual([401, 200, 200]);
  });

  test('have neither their cookie nor anything of the key in the database file', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'sessions-'));
    const { apps } = await instances(1, `sqlite:${folder}/data.db`);
    closing.push(() => rm(folder, { recursive: true }));
    const token = (await begin(apps[0]!)).replace('session=', '');
    const bytes = Buffer.concat([await readFile(join(folder, 'data.db')), await readFile(join(folder, 'data.db-wal'))]);
    const sha = (text: string, form: 'base64url' | 'hex') => createHash('sha256').update(text).digest(form);
    expect(bytes.includes(sha(token, 'base64url'))).toBe(true);
    for (const secret of [token, KEY, sha(KEY, 'base64url'), sha(KEY, 'hex')]) {
      expect(bytes.includes(secret), secret).toBe(false);
    }
  });
});

test('a made-up cookie asks nothing of the database where no session is needed', async () => {
  const store = await openStore('sqlite::memory:');
  let lookUps = 0;
  const session: Store['session'] = (...asked) => {
    lookUps++;
    return store.session(...asked);
  };
  const app = await startApp({ store: { ...store, session }, findOwner: keyring(keys) });
  closing.push(async () => {
    await app.close();
    await store.close();
  });
  const headers = { cookie: `session=${'x'.repeat(43)}` };
  for (const url of ['/healthz', '/openapi.json', '/problems/busy', '/nowhere', '/v1/beds/north/calendar.ics?token=x'])
    await app.inject({ url, headers });
  expect(lookUps).toBe(0);
  expect((await app.inject({ url: '/v1/crops', headers })).statusCode).toBe(401);
  expect(lookUps).toBe(1);
});
