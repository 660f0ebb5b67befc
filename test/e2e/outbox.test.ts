import { createHmac } from 'node:crypto';
import { text } from 'node:stream/consumers';
import { afterEach, expect, test, vi } from 'vitest';
import { OPEN_OWNER } from '../../src/http/auth/owner.js';
import { openStore } from '../../src/storage/open-store.js';
import { emptySqlite } from '../storage/databases.js';
import { serve } from '../unit/egress/servers.js';
import { addressOf, endOf, killAll, run } from './run-service.js';

afterEach(killAll);

test('a service that is killed while it sends sends again, the same message, when it is back; one that stops loses nothing', async () => {
  const { url: database, remove } = await emptySqlite();
  const received: { id: string; body: string; isSigned: boolean }[] = [];
  let isAnswering = false;
  let secret = '';
  const shed = await serve(async (request, response) => {
    const body = await text(request);
    const { 'webhook-id': id, 'webhook-timestamp': at, 'webhook-signature': signature } = request.headers;
    const key = Buffer.from(secret.slice('whsec_'.length), 'base64');
    const expected = createHmac('sha256', key).update(`${id}.${at}.${body}`).digest('base64');
    received.push({ id: String(id), body, isSigned: signature === `v1,${expected}` });
    if (isAnswering) response.end();
  });
  const store = await openStore(database);
  const nowMs = Date.now();
  const put = await store.putSubscription(
    OPEN_OWNER,
    'shed',
    { url: shed.url, events: ['frost'], beds: null, crops: null },
    nowMs,
  );
  secret = 'kept' in put ? put.kept.secret : '';
  const tellings = ['first', 'second'].map((body) => ({ subject: body, before: null, mark: 'told', body }));
  await store.addNotifications(OPEN_OWNER, 'shed', tellings, 'seen');
  const start = () => run([], { DATABASE_URL: database, ALLOW_PRIVATE_WEBHOOKS: '1' });
  const heard = (n: number) => vi.waitFor(() => expect(received).toHaveLength(n), { timeout: 20_000, interval: 50 });

  const killed = start();
  await addressOf(killed);
  await heard(1);
  killed.child.kill('SIGKILL');
  await endOf(killed);
  // Its lease would last for two minutes: let it have run out.
  const lease = (await store.leaseDelivery(OPEN_OWNER, 'shed', nowMs + 1e6, nowMs))!;
  await store.endDelivery(OPEN_OWNER, 'shed', lease, { outcome: 'given-up' });

  const stopped = start();
  await addressOf(stopped);
  await heard(2);
  stopped.child.kill('SIGTERM');
  expect(await endOf(stopped)).toBe(0);
  expect(await store.subscription(OPEN_OWNER, 'shed')).toMatchObject({ pending: 2, failures: 0 });

  isAnswering = true;
  await addressOf(start());
  await heard(4);
  await vi.waitFor(async () => expect((await store.subscription(OPEN_OWNER, 'shed'))!.pending).toBe(0));
  expect(received.map(({ body }) => body)).toEqual(['first', 'first', 'first', 'second']);
  expect(new Set(received.map(({ id }) => id)).size).toBe(2);
  expect(received.every(({ isSigned }) => isSigned)).toBe(true);
  await store.close();
  await shed.close();
  await remove();
});
