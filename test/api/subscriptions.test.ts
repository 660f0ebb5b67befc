import { afterAll, describe, expect, test } from 'vitest';
import { deliveryFact } from '../../src/garden/store/connection-facts.js';
import { factToStore } from '../../src/garden/store/stored-fact.js';
import { keyring } from '../../src/http/auth/keys.js';
import { OPEN_OWNER } from '../../src/http/auth/owner.js';
import { openStore } from '../../src/storage/open-store.js';
import { askerOf, keepQuillmere, NOW, startApp } from './helper.js';

const store = await openStore('sqlite::memory:');
const app = await startApp({ store });
afterAll(async () => {
  await app.close();
  await store.close();
});
await keepQuillmere(app);
const ask = askerOf(app);

const fields = { url: 'https://shed.example/alerts', events: ['hot-spell', 'frost'] };
const defaults = { beds: null, crops: null, pending: 0, deliveredAt: null, failing: null, switchedOff: null };

/** A subscription under an id that no other test uses, gone at the test's end. */
let lastId = 0;
async function subscribed(work: (url: string, id: string, created: Record<string, unknown>) => Promise<void>) {
  const id = `tool-${++lastId}`;
  const url = `/v1/subscriptions/${id}`;
  const created = await ask('PUT', url, fields);
  expect(created.statusCode, created.body).toBe(201);
  await work(url, id, created.json());
  await ask('DELETE', url);
}
const atMs = Date.parse(NOW);
const telling = (subject: string) => ({ subject, before: null, mark: 'told', body: '{}' });

describe('a subscription', () => {
  test('comes back as it was put; its secret is shown once, where it is created', () =>
    subscribed(async (url, id, { secret, ...created }) => {
      expect(secret).toMatch(/^whsec_[A-Za-z0-9+/]{43}=$/);
      expect(created).toMatchObject({ ...fields, ...defaults, id });
      const answers = [
        await ask('GET', url),
        await ask('PUT', url, fields),
        await ask('PUT', url, { ...fields, beds: ['north'] }),
      ];
      for (const answer of answers) {
        expect(answer.statusCode).toBe(200);
        expect(answer.body).not.toContain('whsec_');
      }
      const list = await ask('GET', '/v1/subscriptions');
      expect(list.body).not.toContain('whsec_');
      expect(list.json().subscriptions).toContainEqual(expect.objectContaining({ id, beds: ['north'] }));
      // Another is had by beginning anew.
      expect((await ask('DELETE', url)).statusCode).toBe(204);
      expect((await ask('GET', url)).statusCode).toBe(404);
      const again = await ask('PUT', url, fields);
      expect(again.statusCode).toBe(201);
      expect(again.json().secret).toMatch(/^whsec_/);
      expect(again.json().secret).not.toBe(secret);
    }));

  test('heeds If-Match', () =>
    subscribed(async (url) => {
      const headers = { 'if-match': String((await ask('GET', url)).headers.etag) };
      const changed = await ask('PUT', url, { ...fields, crops: ['lettuce'] }, headers);
      expect(changed.statusCode).toBe(200);
      expect(changed.headers.etag).toBe((await ask('GET', url)).headers.etag);
      expect((await ask('PUT', url, fields, headers)).statusCode).toBe(412);
      expect((await ask('PUT', '/v1/subscriptions/new', fields, { 'if-match': '*' })).statusCode).toBe(412);
    }));

  test('says what waits, what fails and why, and since when it is switched off; put again, it is on', () =>
    subscribed(async (url, id) => {
      await store.addNotifications(OPEN_OWNER, id, [telling('a'), telling('b')], 'seen');
      const end = async (how: Parameters<typeof store.endDelivery>[3]) => {
        const delivery = (await store.leaseDelivery(OPEN_OWNER, id, atMs + 1e9, atMs + 1e9))!;
        await store.endDelivery(OPEN_OWNER, id, delivery, how);
        return (await ask('GET', url)).json();
      };
      const nextAtMs = atMs + 5000;
      const refused = { fault: 'refused', seconds: null, errorCode: null } as const;
      const error = factToStore(deliveryFact('delivery.connection', refused));
      const failing = { times: 1, code: 'delivery.connection', params: refused, nextTryAt: '2027-08-03T14:00:05.000Z' };
      expect(await end({ outcome: 'failed', nextAtMs, error })).toMatchObject({
        pending: 2,
        failing: { ...failing, why: 'It refused the connection.' },
      });
      expect((await ask('GET', `${url}?lang=de`)).json()).toMatchObject({
        failing: { ...failing, why: 'Der Empfänger hat die Verbindung abgelehnt.' },
      });
      expect(await end({ outcome: 'delivered', atMs })).toMatchObject({ pending: 1, deliveredAt: NOW, failing: null });
      // A sentence, as it was stored before there were facts.
      const off = { switchedOff: { at: NOW, why: 'It is gone.' }, failing: null, pending: 1 };
      expect(await end({ outcome: 'switched-off', atMs, error: 'It is gone.' })).toMatchObject(off);
      expect((await ask('PUT', url, fields)).json()).toMatchObject({ switchedOff: null, pending: 1 });
    }));

  test('of window-open needs its crops named', () =>
    subscribed(async (url) => {
      const wanted = { ...fields, events: ['window-open'] };
      expect((await ask('PUT', url, wanted)).json()).toMatchObject({ status: 422, errors: [{ pointer: '#/crops' }] });
      expect((await ask('PUT', url, { ...wanted, crops: ['lettuce'] })).statusCode).toBe(200);
    }));

  test('names beds and crops that there are', () =>
    subscribed(async (url) => {
      expect((await ask('PUT', url, { ...fields, beds: ['north', 'nowhere'] })).json()).toMatchObject({
        status: 422,
        code: 'unknown-bed',
        errors: [{ pointer: '#/beds/1' }],
      });
      expect((await ask('PUT', url, { ...fields, crops: ['lettuce', 'moonflower'] })).json()).toMatchObject({
        status: 422,
        code: 'unknown-crop',
        errors: [{ pointer: '#/crops/1' }],
      });
    }));
});

describe('the address of a subscription', () => {
  const put = async (url: string, asked = ask) =>
    (await asked('PUT', '/v1/subscriptions/shed', { ...fields, url })).json();

  test.each([
    ['http://shed.example/', 'must begin with https://'],
    ['ftp://shed.example/', 'must begin with https://'],
    ['javascript:alert(1)', 'must begin with https://'],
    ['shed', 'must be a whole address'],
    ['https://a:b@shed.example/', 'user name or password'],
    ['https://shed.example/#here', 'fragment'],
    ['https://shed.example/a b', 'spaces'],
    ['https://127.0.0.1/', 'ALLOW_PRIVATE_WEBHOOKS'],
    ['https://2130706433/', 'ALLOW_PRIVATE_WEBHOOKS'],
    ['https://10.1.2.3/', 'private'],
    ['https://169.254.169.254/latest', 'private'],
    ['https://[::1]/', 'private'],
    ['https://[::ffff:10.0.0.1]/', 'private'],
    ['https://localhost/', 'private'],
    ['https://shed.localhost./', 'private'],
  ])('is not %s', async (url, why) => {
    const problem = await put(url);
    expect(problem).toMatchObject({ status: 422, errors: [{ pointer: '#/url' }] });
    expect(problem.detail).toContain(why);
  });

  test('may be a private one, and such without encryption, where the service was started so', async () => {
    const open = await startApp({ store, allowPrivateWebhooks: true });
    for (const url of ['http://127.0.0.1:8090/alerts', 'https://10.1.2.3/', 'http://localhost/']) {
      expect(await put(url, askerOf(open))).toMatchObject({ url });
    }
    await open.close();
  });
});

describe('subscriptions', () => {
  test('are twenty at most', async () => {
    const { subscriptions } = (await ask('GET', '/v1/subscriptions')).json();
    const more = Array.from({ length: 20 - subscriptions.length }, (_, i) => `/v1/subscriptions/more-${i}`);
    for (const url of more) expect((await ask('PUT', url, fields)).statusCode).toBe(201);
    const refused = await ask('PUT', '/v1/subscriptions/one-more', fields);
    expect([refused.statusCode, refused.json().code]).toEqual([409, 'quota-full']);
    expect((await ask('PUT', more[0]!, { ...fields, beds: ['north'] })).statusCode).toBe(200);
    for (const url of more) await ask('DELETE', url);
  });

  test('are seen by their owner alone', async () => {
    const keys = new Map([
      ['mine', 'mine'],
      ['theirs', 'theirs'],
    ]);
    const shared = await startApp({ findOwner: keyring(keys) });
    const as = (key: string) => (method: 'GET' | 'PUT' | 'DELETE', url: string, payload?: object) =>
      shared.inject({ method, url, headers: { authorization: `Bearer ${key}` }, ...(payload ? { payload } : {}) });
    const url = '/v1/subscriptions/shed';
    await as('mine')('PUT', url, fields);
    const before = (await as('mine')('GET', url)).json();
    expect((await as('theirs')('GET', url)).statusCode).toBe(404);
    expect((await as('theirs')('GET', '/v1/subscriptions')).json().subscriptions).toEqual([]);
    expect((await as('theirs')('DELETE', url)).statusCode).toBe(404);
    expect((await as('theirs')('PUT', url, { ...fields, url: 'https://other.example/' })).statusCode).toBe(201);
    await as('theirs')('DELETE', url);
    expect((await as('mine')('GET', url)).json()).toEqual(before);
    expect((await shared.inject(url)).statusCode).toBe(401);
    await shared.close();
  });
});
