import { chmod, mkdtemp, readFile, rm, stat, unlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Libsql from 'libsql';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { keyring } from '../../../src/http/auth/keys.js';
import { migrate } from '../../../src/storage/migrate.js';
import { openDatabase, openStore } from '../../../src/storage/open-store.js';
import { plainSecrets, sealedBy } from '../../../src/storage/secrets/secrets.js';
import { storeOf } from '../../../src/storage/store-of.js';
import { startApp } from '../../api/helper.js';
import { northBed, quillmere } from '../../storage/make.js';
import { sayStored } from '../words/say-plainly.js';

const KEY = 'a key of the Quillmere Allotment Society';
const fields = { url: 'https://shed.example/alerts', events: ['frost'], beds: null, crops: null } as const;

let folder: string;
let file: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'secrets-'));
  file = join(folder, 'data.db');
});
afterEach(() => rm(folder, { recursive: true }));

/** Every byte that a thief of the database has. */
async function stolen(): Promise<string> {
  const parts = await Promise.all(['', '-wal', '-shm'].map((end) => readFile(file + end).catch(() => Buffer.alloc(0))));
  return Buffer.concat(parts).toString('latin1');
}

interface Secret {
  readonly token: string;
  readonly secret: string;
}

async function keepSome(store: Awaited<ReturnType<typeof openStore>>): Promise<Secret> {
  await store.putPlace('mine', 'quillmere', quillmere);
  await store.putBed('mine', 'north', northBed);
  await store.putSubscription('mine', 'shed', fields, 0);
  return secretsIn(store);
}
const secretsIn = async (store: Awaited<ReturnType<typeof openStore>>): Promise<Secret> => ({
  token: (await store.bed('mine', 'north'))!.calendarToken!,
  secret: (await store.subscription('mine', 'shed'))!.secret,
});

describe('a stolen database file', () => {
  test.each([{}, { secretsKey: KEY }])('tells no secret, and all goes on after a restart: %j', async (settings) => {
    const store = await openStore(`sqlite:${file}`, settings);
    const known = await keepSome(store);
    expect(known).toMatchObject({
      token: expect.stringMatching(/^[\w-]{43}$/),
      secret: expect.stringMatching(/^whsec_/),
    });
    for (const secret of Object.values(known)) expect(await stolen()).not.toContain(secret);
    const renewed = (await store.renewCalendarToken('mine', 'north'))!;
    expect(await stolen()).not.toContain(renewed);
    await store.close();
    const again = await openStore(`sqlite:${file}`, settings);
    expect(await secretsIn(again)).toEqual({ ...known, token: renewed });
    expect(await again.bedOfCalendar('north', renewed)).toEqual({ owner: 'mine' });
    expect(await again.bedOfCalendar('north', known.token)).toBeUndefined();
    await again.addNotifications('mine', 'shed', [{ subject: 'a', before: null, mark: 'told', body: '{}' }], 'seen');
    expect(await again.leaseDelivery('mine', 'shed', 1, 2)).toMatchObject({ secret: known.secret });
    await again.close();
  });

  test('tells no secret that an earlier version kept plain, once this one has started', async () => {
    const raw = await openDatabase(`sqlite:${file}`);
    await migrate(raw);
    const known = await keepSome(storeOf(raw));
    expect(await stolen()).toContain(known.secret);
    expect(await stolen()).toContain(known.token);
    await raw.transaction((query) => query.run('update beds set calendar_digest = null'));
    await raw.close();
    const store = await openStore(`sqlite:${file}`);
    for (const secret of Object.values(known)) expect(await stolen()).not.toContain(secret);
    expect(await secretsIn(store)).toEqual(known);
    expect(await store.bedOfCalendar('north', known.token)).toEqual({ owner: 'mine' });
    await store.close();
  });
});

describe('the key file', () => {
  test('lies beside the database, for its owner alone, and is the same for all who start at once', async () => {
    const stores = await Promise.all([1, 2, 3].map(() => openStore(`sqlite:${file}`)));
    expect((await stat(`${file}.key`)).mode & 0o777).toBe(0o600);
    const known = await keepSome(stores[0]!);
    for (const store of stores) expect(await secretsIn(store)).toEqual(known);
    for (const store of stores) await store.close();
  });

  test('that is lost, damaged or another is said in one line, and nothing is changed', async () => {
    const store = await openStore(`sqlite:${file}`);
    const known = await keepSome(store);
    await store.close();
    const key = await readFile(`${file}.key`, 'utf8');
    await unlink(`${file}.key`);
    const start = () => openStore(`sqlite:${file}`);
    await expect(start()).rejects.toThrow(/^[^\n]*that file is gone; put it back[^\n]*FORGET_SECRETS=1[^\n]*$/);
    await expect(stat(`${file}.key`)).rejects.toMatchObject({ code: 'ENOENT' });
    await writeFile(`${file}.key`, `${Buffer.alloc(32, 7).toString('base64')}\n`);
    await expect(start()).rejects.toThrow('sealed with another key');
    await writeFile(`${file}.key`, 'x');
    await expect(start()).rejects.toThrow('holds no key of 32 bytes');
    const other = () => openStore(`sqlite:${file}`, { secretsKey: KEY });
    await expect(other()).rejects.toThrow(`take SECRETS_KEY away again, as the key is probably the one in ${file}.key`);
    await unlink(`${file}.key`);
    await expect(other()).rejects.toThrow('SECRETS_KEY; set the one that it had');
    await writeFile(`${file}.key`, key);
    const again = await start();
    expect(await secretsIn(again)).toEqual(known);
    await again.close();
  }, 60_000);

  test('that is lost for good can be given up: calendars have no address, and subscriptions are switched off', async () => {
    const store = await openStore(`sqlite:${file}`);
    const known = await keepSome(store);
    await store.close();
    await unlink(`${file}.key`);
    const warnings: string[] = [];
    const settings = { forgetSecrets: { atMs: 5 }, warn: (text: string) => void warnings.push(text) };
    const again = await openStore(`sqlite:${file}`, settings);
    expect(warnings.join()).toContain('given up');
    expect((await again.bed('mine', 'north'))!.calendarToken).toBeNull();
    expect(await again.bedOfCalendar('north', known.token)).toBeUndefined();
    const shed = (await again.subscription('mine', 'shed'))!;
    expect(shed.secret).not.toBe(known.secret);
    expect(shed.switchedOff!.atMs).toBe(5);
    expect(sayStored(shed.switchedOff!.reason)).toContain('DELETE the subscription');
    const token = await again.renewCalendarToken('mine', 'north');
    await again.close();
    // The setting that is left on gives up nothing more.
    const third = await openStore(`sqlite:${file}`, settings);
    expect((await third.bed('mine', 'north'))!.calendarToken).toBe(token);
    await third.close();
  });

  test('that cannot be made is said', async () => {
    const store = await openStore(`sqlite:${file}`, { secretsKey: KEY });
    await store.close();
    if (process.getuid?.() === 0) return;
    await chmod(folder, 0o500);
    await expect(openStore(`sqlite:${file}`)).rejects.toThrow();
    await chmod(folder, 0o700);
  });
});

describe('a sealed secret', () => {
  const [secrets, others] = [sealedBy(KEY), sealedBy(`${KEY}!`)];

  test('opens for whom it was sealed, with its key, unchanged, and not otherwise', () => {
    const sealed = secrets.seal('whsec_x', ['webhook', 'mine', 'shed']);
    expect(secrets.open(sealed, ['webhook', 'mine', 'shed'])).toBe('whsec_x');
    expect(secrets.seal('whsec_x', ['webhook', 'mine', 'shed'])).not.toBe(sealed);
    expect(() => secrets.open(sealed, ['webhook', 'theirs', 'shed'])).toThrow();
    expect(() => secrets.open(sealed, ['webhook', 'mine', 'barn'])).toThrow();
    expect(() => secrets.open(sealed, ['calendar', 'mine', 'shed'])).toThrow();
    expect(() => others.open(sealed, ['webhook', 'mine', 'shed'])).toThrow();
    expect(() => plainSecrets.open(sealed, ['webhook', 'mine', 'shed'])).toThrow();
    const at = sealed.length - 3;
    const changed = sealed.slice(0, at) + (sealed[at] === 'A' ? 'B' : 'A') + sealed.slice(at + 1);
    expect(() => secrets.open(changed, ['webhook', 'mine', 'shed'])).toThrow();
    expect(() => secrets.open('sealed:1:AAAA', ['webhook', 'mine', 'shed'])).toThrow();
  });

  test('put into the row of another opens nothing there', async () => {
    const store = await openStore(`sqlite:${file}`);
    await keepSome(store);
    await store.putBed('mine', 'south', northBed);
    await store.close();
    const thief = new Libsql(file);
    thief.exec(
      "update beds set calendar_token = (select calendar_token from beds where id = 'north') where id = 'south'",
    );
    thief.close();
    const again = await openStore(`sqlite:${file}`);
    await expect(again.bed('mine', 'south')).rejects.toThrow();
    await again.close();
  });
});

describe('an instance with another key than one beside it', () => {
  test.each([
    ['another', sealedBy('another key of the society, no less long')],
    ['none', plainSecrets],
  ])('(%s) refuses what that one sealed as storage, in words for whoever runs it, and goes on', async (_, secrets) => {
    const store = await openStore(`sqlite:${file}`, { secretsKey: KEY });
    const database = await openDatabase(`sqlite:${file}`);
    const other = storeOf(database, { secrets });
    const known = await keepSome(store);
    const refused = {
      name: 'StorageError',
      code: 'storage-unavailable',
      message: expect.stringMatching(/sealed with another key.*give all instances the same SECRETS_KEY/),
    };
    await expect(other.bed('mine', 'north')).rejects.toMatchObject(refused);
    await expect(other.subscriptions('mine', { limit: 9 })).rejects.toMatchObject(refused);
    const app = await startApp({ store: other, findOwner: keyring(new Map([['plain-key', 'mine']])) });
    const get = (url: string) => app.inject({ url, headers: { authorization: 'Bearer plain-key' } });
    for (const url of ['/v1/beds/north', '/v1/subscriptions', '/v1/subscriptions/shed']) {
      const answer = await get(url);
      expect([answer.statusCode, answer.json().code, answer.headers['retry-after']]).toEqual([503, refused.code, '5']);
    }
    expect((await get('/v1/places')).statusCode).toBe(200);
    await app.close();
    await other.close();
    expect(await secretsIn(store)).toEqual(known);
    await store.close();
  });
});
