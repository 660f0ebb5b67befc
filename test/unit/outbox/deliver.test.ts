import { createHmac } from 'node:crypto';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { text } from 'node:stream/consumers';
import { describe, expect, test, vi } from 'vitest';
import { HOUR_MS } from '../../../src/basics/calendar.js';
import type { SubscriptionFields } from '../../../src/garden/store/alert-store.js';
import type { Store } from '../../../src/garden/store/store.js';
import { type DeliverSettings, deliver } from '../../../src/outbox/deliver.js';
import { delivering } from '../../../src/outbox/keep-delivering.js';
import { webhookSender } from '../../../src/outbox/send-webhook.js';
import { openStore } from '../../../src/storage/open-store.js';
import { emptySqlite } from '../../storage/databases.js';
import { closedAfterEach, serve } from '../egress/servers.js';
import { sayStored } from '../words/say-plainly.js';

const OWNER = 'quillmere';
const NOW = Date.parse('2027-05-03T12:00Z');
const MINUTE_MS = 60_000;

const { open } = closedAfterEach();

interface Received {
  readonly id: string;
  readonly atS: number;
  readonly body: string;
  readonly isSigned: boolean;
}

type Answer = (request: IncomingMessage, response: ServerResponse) => void;
const thanks: Answer = (_, response) => void response.end();

/** A receiver on this machine that answers so, checks signatures, and remembers what it got. */
async function receiver(answer: Answer = thanks) {
  const received: Received[] = [];
  const state = { answer, secret: '' };
  const server = await serve(async (request, response) => {
    const body = await text(request);
    const id = String(request.headers['webhook-id']);
    const at = String(request.headers['webhook-timestamp']);
    const key = Buffer.from(state.secret.replace('whsec_', ''), 'base64');
    const expected = createHmac('sha256', key).update(`${id}.${at}.${body}`).digest('base64');
    const isSigned = request.headers['webhook-signature'] === `v1,${expected}`;
    received.push({ id, atS: Number(at), body, isSigned });
    state.answer(request, response);
  });
  open.push(server);
  return { url: `${server.url}/alerts`, received, state };
}

interface Outbox {
  readonly store: Store;
  readonly settings: DeliverSettings;
  /** What was logged, as text. */
  readonly logged: string[];
  /** Sends all that is due so long after the start, one message of each subscription. */
  roundAfter(hours: number): Promise<void>;
  state(id?: string): Promise<NonNullable<Awaited<ReturnType<Store['subscription']>>>>;
  tell(id: string, bodies: readonly string[]): Promise<unknown>;
}

async function outbox(
  url: string,
  ids: readonly string[] = ['shed'],
  { store, wholeMs = 400 }: { readonly store?: Store; readonly wholeMs?: number } = {},
): Promise<Outbox> {
  const own = store ?? (await openStore('sqlite::memory:'));
  const sender = webhookSender({
    userAgent: 'germination-forecaster/0.0.0-test',
    isAllowed: (address) => address === '127.0.0.1',
    allowHttp: true,
    limits: { wholeMs, listenMs: 50 },
  });
  open.push(own, sender);
  let hours = 0;
  const logged: string[] = [];
  const log = (details: object, message: string): void => void logged.push(`${message} ${JSON.stringify(details)}`);
  const settings: DeliverSettings = {
    store: own,
    sender,
    clock: () => new Date(NOW + hours * HOUR_MS),
    random: () => 0,
    log: { info: log, warn: log, error: log },
    signal: new AbortController().signal,
  };
  const fields: SubscriptionFields = { url, events: ['frost'], beds: null, crops: null };
  if (!store) for (const id of ids) await own.putSubscription(OWNER, id, fields, NOW);
  let subjects = 0;
  return {
    store: own,
    settings,
    logged,
    async roundAfter(after) {
      hours = after;
      for (const one of await own.dueDeliveries(settings.clock().getTime(), 100)) await deliver(one, settings);
    },
    state: async (id = 'shed') => (await own.subscription(OWNER, id))!,
    tell: (id, bodies) =>
      own.addNotifications(
        OWNER,
        id,
        bodies.map((body) => ({ subject: `subject ${++subjects}`, before: null, mark: 'told', body })),
        'seen',
      ),
  };
}

describe('a message is delivered', () => {
  test('signed so that its receiver can prove it, in the order of their notifications', async () => {
    const shed = await receiver();
    const { tell, roundAfter, state } = await outbox(shed.url);
    shed.state.secret = (await state()).secret;
    const bodies = ['{"text":"Frost, −1 °C"}', '{"text":"b"}', '{"text":"c"}'];
    await tell('shed', bodies);
    for (let i = 0; i < 4; i++) await roundAfter(i);
    expect(shed.received.map(({ body }) => body)).toEqual(bodies);
    expect(shed.received.every(({ isSigned }) => isSigned)).toBe(true);
    expect(shed.received.map(({ atS }) => atS)).toEqual([0, 1, 2].map((hours) => (NOW + hours * HOUR_MS) / 1000));
    expect(await state()).toMatchObject({ pending: 0, deliveredAtMs: NOW + 2 * HOUR_MS });
  });

  test('again with the same id and a new time where its sender died: at least once', async () => {
    const shed = await receiver();
    const { store, tell, roundAfter, state } = await outbox(shed.url);
    shed.state.secret = (await state()).secret;
    await tell('shed', ['{}']);
    // It was sent, and then the process was killed before it could say so.
    const first = (await store.leaseDelivery(OWNER, 'shed', NOW, NOW + 2 * MINUTE_MS))!;
    await roundAfter(1 / 60);
    expect(shed.received).toEqual([]);
    await roundAfter(1);
    expect(shed.received).toMatchObject([{ id: first.messageId, atS: (NOW + HOUR_MS) / 1000, isSigned: true }]);
    expect(await state()).toMatchObject({ pending: 0 });
  });

  test('once by two services over one database', async () => {
    const shed = await receiver();
    const { url, remove } = await emptySqlite();
    open.push({ close: remove });
    const stores = await Promise.all([openStore(url), openStore(url)]);
    for (const store of stores) open.push(store);
    const ids = Array.from({ length: 10 }, (_, i) => `shed-${i}`);
    const fields: SubscriptionFields = { url: shed.url, events: ['frost'], beds: null, crops: null };
    for (const id of ids) await stores[0]!.putSubscription(OWNER, id, fields, NOW);
    const services = await Promise.all(stores.map((store) => outbox(shed.url, [], { store })));
    for (const id of ids) await services[0]!.tell(id, [`${id} 1`, `${id} 2`, `${id} 3`]);
    const works = services.map(({ settings }) => delivering(settings));
    await Promise.all(works.map((work) => work.begin()));
    await vi.waitFor(() => expect(shed.received.length).toBeGreaterThanOrEqual(30), { timeout: 10_000 });
    await Promise.all(works.map((work) => work.stop()));
    expect(shed.received.map(({ body }) => body).sort()).toEqual(
      ids.flatMap((id) => [1, 2, 3].map((n) => `${id} ${n}`)),
    );
    for (const id of ids) {
      const order = shed.received.filter(({ body }) => body.startsWith(`${id} `)).map(({ body }) => body.at(-1));
      expect(order).toEqual(['1', '2', '3']);
    }
  });

  test('while others hang: a slow receiver holds up nobody else', async () => {
    const slow = await receiver(() => {});
    const quick = await receiver();
    const { store, settings, tell, state } = await outbox(slow.url, ['a', 'b', 'c'], { wholeMs: 60_000 });
    const fields: SubscriptionFields = { url: quick.url, events: ['frost'], beds: null, crops: null };
    await store.putSubscription(OWNER, 'quick', fields, NOW);
    for (const id of ['a', 'b', 'c', 'quick']) await tell(id, ['{}', '{}']);
    const stopping = new AbortController();
    const work = delivering({ ...settings, signal: stopping.signal });
    await work.begin();
    await vi.waitFor(() => expect([slow.received.length, quick.received.length]).toEqual([3, 2]), { timeout: 10_000 });
    for (const id of ['a', 'b', 'c']) expect(await state(id)).toMatchObject({ pending: 2, failures: 0 });
    stopping.abort();
    await work.stop();
  });

  test('or given up when the service stops, without counting as a failure', async () => {
    const slow = await receiver(() => {});
    const { store, settings, tell, state } = await outbox(slow.url);
    await tell('shed', ['{}']);
    const stopping = new AbortController();
    const work = delivering({ ...settings, signal: stopping.signal });
    await work.begin();
    await vi.waitFor(() => expect(slow.received).toHaveLength(1), { interval: 5 });
    stopping.abort();
    await work.stop();
    expect(await state()).toMatchObject({ pending: 1, failures: 0, lastError: null });
    expect(await store.dueDeliveries(NOW, 9)).toHaveLength(1);
  });
});

describe('a message that is not taken', () => {
  test('is sent again, ever later, until it is; those behind it wait, and none is lost', async () => {
    const shed = await receiver((_, response) => response.writeHead(503).end());
    const { tell, roundAfter, state } = await outbox(shed.url);
    await tell('shed', ['a', 'b']);
    await roundAfter(0);
    expect(await state()).toMatchObject({ pending: 2, failures: 1, nextAtMs: NOW + 5000 });
    expect(sayStored((await state()).lastError!)).toBe('It answered with status 503: it is in trouble itself.');
    await roundAfter(4 / 3600);
    expect(shed.received).toHaveLength(1);
    for (const hours of [0.01, 0.2, 1]) await roundAfter(hours);
    shed.state.answer = thanks;
    for (const hours of [10, 11]) await roundAfter(hours);
    expect(shed.received.map(({ body }) => body)).toEqual(['a', 'a', 'a', 'a', 'a', 'b']);
    expect(new Set(shed.received.map(({ id }) => id)).size).toBe(2);
    expect(await state()).toMatchObject({ pending: 0, failures: 0, lastError: null });
  });

  test('is not sent before its receiver wishes', async () => {
    const shed = await receiver((_, response) => response.writeHead(429, { 'retry-after': '7200' }).end());
    const { tell, roundAfter, state } = await outbox(shed.url);
    await tell('shed', ['a']);
    await roundAfter(0);
    expect((await state()).nextAtMs).toBe(NOW + 2 * HOUR_MS);
  });

  test('for three days switches its subscription off, with the reason; put again, all goes out', async () => {
    const shed = await receiver((_, response) => response.writeHead(500).end());
    const { store, tell, roundAfter, state } = await outbox(shed.url);
    await tell('shed', ['a', 'b']);
    let hours = 0;
    while ((await state()).switchedOff === null && hours < 200) {
      await roundAfter(hours);
      hours = ((await state()).nextAtMs - NOW) / HOUR_MS;
    }
    const { switchedOff, pending } = await state();
    expect(shed.received).toHaveLength(10);
    expect(switchedOff!.atMs - NOW).toBeGreaterThan(72 * HOUR_MS);
    expect(sayStored(switchedOff!.reason)).toBe('It answered with status 500: it is in trouble itself.');
    expect(pending).toBe(2);
    await roundAfter(1000);
    expect(shed.received).toHaveLength(10);

    shed.state.answer = thanks;
    const { url, events, beds, crops } = await state();
    await store.putSubscription(OWNER, 'shed', { url, events, beds, crops }, NOW + 1000 * HOUR_MS);
    for (const after of [1000, 1001]) await roundAfter(after);
    expect(shed.received.slice(10).map(({ body }) => body)).toEqual(['a', 'b']);
    expect(shed.received[10]!.id).toBe(shed.received[0]!.id);
    expect(await state()).toMatchObject({ pending: 0, switchedOff: null });
  });

  test('by one that is gone (410) switches it off at once', async () => {
    const shed = await receiver((_, response) => response.writeHead(410).end());
    const { tell, roundAfter, state } = await outbox(shed.url);
    await tell('shed', ['a']);
    await roundAfter(0);
    const { pending, switchedOff } = await state();
    expect([pending, switchedOff!.atMs]).toEqual([1, NOW]);
    expect(sayStored(switchedOff!.reason)).toContain('410');
  });

  test('and nothing of its secret is ever logged', async () => {
    let status = 200;
    const shed = await receiver((_, response) => response.writeHead(status).end());
    const { tell, roundAfter, state, logged } = await outbox(shed.url);
    await tell('shed', ['a', 'b', 'c']);
    for (const [hours, answer] of [500, 200, 410].entries()) {
      status = answer;
      await roundAfter(hours + 1);
    }
    expect(logged).toHaveLength(3);
    const { secret } = await state();
    for (const line of logged) {
      expect(line).not.toContain(secret.slice('whsec_'.length));
      expect(line).not.toContain('v1,');
    }
  });
});
